/** Every kind of page as axe-core reads it, by day and by night, folded and open, and at the widths of a telephone, a tablet and a desk. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import type axe from 'axe-core'
import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fitted, folderOf } from '../cli/fit-folder.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { plantKeys, plantLine, plantTexts } from '../questions/plant-days.js'
import { recordText } from '../record/texts.js'

/** Where Debian's package has it. */
const executable = '/usr/bin/chromium'
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

const root = mkdtempSync(path.join(tmpdir(), 'tapeshift-accessible-'))
const few = ['--shifts', '4', '--workers', '1', '--quiet', '--anyway']

/** The page that a command writes of the demo line. */
async function ofDemo(name: string, command: string, ...more: string[]): Promise<string> {
  const out = path.join(root, name)
  const { code, err } = await call([command, 'tape-choice.yaml', ...few, ...more, '--out', out], {
    cwd: demoFolder,
  })
  // of so few shifts nothing need hold
  expect([0, 4], err).toContain(code)
  return path.join(out, 'report.html')
}

async function ofFit(): Promise<string> {
  const cwd = folderOf()
  const { code, err } = await fitted(cwd, '--quiet', '--out', 'out')
  expect(code, err).toBe(0)
  return path.join(cwd, 'out/report.html')
}

async function ofValidation(): Promise<string> {
  const cwd = mkdtempSync(path.join(root, 'validate-'))
  const { shifts, stops } = plantTexts(plantLine(), 8)
  const files = {
    'line.yaml': plantLine(),
    'plant.yaml': recordText(plantKeys),
    'shifts.csv': shifts,
    'stops.csv': stops,
  }
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(cwd, name), text)
  const asked = ['--margin', '3 %', '--unseen', '--runs', '39', '--workers', '1', '--quiet', '--out', 'out']
  const { code, err } = await call(['validate', 'line.yaml', 'plant.yaml', ...asked], { cwd })
  expect([0, 4], err).toContain(code)
  return path.join(cwd, 'out/report.html')
}

async function ofManual(): Promise<string> {
  const { cwd } = await call(['manual'])
  return path.join(cwd, 'out/manual.html')
}

const length = ['--vary', 'line.infeed.length=4..8/2 m']
const speed = ['--vary', 'line.sealer.belt-speed=18..20/2 m/min']

/** How each page is made. */
const pages: Readonly<Record<string, () => Promise<string>>> = {
  run: () => ofDemo('run', 'run'),
  compare: () => ofDemo('compare', 'compare'),
  size: () =>
    ofDemo(
      'size',
      'size',
      '--choose',
      'variant=base,three-inch',
      '--holds',
      'target-held >= 50 % within 3 %',
    ),
  'sweep, a curve': () => ofDemo('curve', 'sweep', ...length),
  'sweep, a grid': () => ofDemo('grid', 'sweep', ...length, ...speed),
  'sweep, each input': () => ofDemo('each', 'sweep', '--each', '--vary', 'line.infeed.length=4..8 m'),
  fit: ofFit,
  validate: ofValidation,
  manual: ofManual,
}

const widths = [390, 768, 1440]

const openAll = (page: Page, isOpen: boolean) =>
  page.evaluate((open) => {
    for (const each of document.querySelectorAll('details')) each.open = open
  }, isOpen)

/** What is serious, in words: the rule, how often, and the first place. */
const seriousIn = (page: Page) =>
  page.evaluate(async () => {
    const { axe: reader } = window as unknown as { axe: typeof axe }
    const { violations } = await reader.run(document, { resultTypes: ['violations'] })
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}, ${nodes.length} times, first ${nodes[0]!.html.slice(0, 200)}`)
  })

if (!existsSync(executable))
  describe('without a browser', () => {
    it('no page is looked at: what CI must never do', () => {
      console.warn(`NOT RUN: there is no ${executable}, so no page was opened (apt-get install chromium)`)
      expect(process.env.CI).not.toBe('true')
    })
  })
else
  describe.each(Object.entries(pages))('the page of %s', (_, made) => {
    let browser: Browser
    let page: Page
    beforeAll(async () => {
      const file = await made()
      browser = await chromium.launch({
        executablePath: executable,
        args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
      })
      // what the policy of the page forbids is what reads it here
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, bypassCSP: true })
      page = await context.newPage()
      await page.goto(pathToFileURL(file).href)
      if (await page.$('#result')) await page.waitForSelector('html[data-drawn=all]', { state: 'attached' })
      await page.evaluate(axeSource)
    }, 120_000)
    afterAll(() => browser?.close())

    it.each(['light', 'dark'] as const)(
      'keeps nobody out when it is %s, folded and open: WCAG 2.2 AA as far as a program can tell',
      async (colorScheme) => {
        await page.emulateMedia({ colorScheme })
        for (const isOpen of [false, true]) {
          await openAll(page, isOpen)
          expect(await seriousIn(page), isOpen ? 'open' : 'folded').toEqual([])
        }
      },
      60_000,
    )

    it('scrolls sideways at no width, folded and open', async () => {
      for (const width of widths) {
        await page.setViewportSize({ width, height: 900 })
        for (const isOpen of [false, true]) {
          await openAll(page, isOpen)
          const reach = await page.evaluate(() => document.documentElement.scrollWidth)
          expect(reach, `${width} px, ${isOpen ? 'open' : 'folded'}`).toBeLessThanOrEqual(width)
        }
      }
    })
  })
