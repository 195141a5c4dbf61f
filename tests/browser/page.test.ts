/** The page of a report in a real browser: it draws, asks for nothing, fits, prints, does without scripts, and takes no name for markup. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { pdfText } from './pdf-text.js'
import { seenAt, spotsAtEnd } from './replay-end.js'

/** Where Debian's package has it. */
const executable = '/usr/bin/chromium'
const flags = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
]

/** A page that is open, with all that it asked for and complained of. */
interface Opened {
  page: Page
  complaints: string[]
  requests: string[]
}

/** A name that would like to be more than that. */
const evil = [
  '<script>alert(1)</script>',
  '</script\u003e<img src=x onerror=alert(2)>',
  '</SCRIPT/><svg onload=alert(3)>',
  '<!-- <script>',
  '\u202eturned\u202c \u200fmark',
  '" onmouseover="alert(4)',
].join(' ')

let browser: Browser
const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-page-'))

async function opened(file: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options })
  const page = await context.newPage()
  const complaints: string[] = []
  const requests: string[] = []
  page.on('console', (message) => complaints.push(`${message.type()}: ${message.text()}`))
  page.on('pageerror', (error) => complaints.push(String(error)))
  page.on('dialog', (dialog) => {
    complaints.push(`dialog: ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('request', (request) => {
    if (!request.url().startsWith('data:')) requests.push(request.url())
  })
  await page.goto(pathToFileURL(file).href)
  if (options.javaScriptEnabled !== false)
    await page.waitForSelector('html[data-drawn=all]', { state: 'attached' })
  return { page, complaints, requests }
}

/** Opens all folds, as the button does. */
async function unfolded(page: Page): Promise<void> {
  await page.click('#open-all')
  await expect.poll(() => page.locator('details.fold:not([open])').count()).toBe(0)
}

async function made(command: string, scenario: string): Promise<string> {
  const out = path.join(folder, `${command}-${scenario}`)
  const { code, err } = await call(
    [command, `${scenario}.yaml`, '--shifts', '12', '--workers', '1', '--quiet', '--out', out],
    { cwd: demoFolder },
  )
  expect(code, err).toBe(0)
  return path.join(out, 'report.html')
}

/** Of each canvas: how many colours it shows, and the share of it that is not paper. */
const inkOf = (page: Page) =>
  page.$$eval('figure canvas', (all) =>
    all.map((each) => {
      const canvas = each as unknown as {
        width: number
        height: number
        getContext(kind: '2d'): CanvasRenderingContext2D
      }
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
      const colours = new Set<number>()
      let inked = 0
      for (let at = 0; at < data.length; at += 4) {
        if (data[at + 3] === 0) continue
        inked++
        colours.add((data[at]! << 16) | (data[at + 1]! << 8) | data[at + 2]!)
      }
      return { colours: colours.size, share: inked / (data.length / 4) }
    }),
  )

const isThere = existsSync(executable)

if (!isThere)
  describe('without a browser', () => {
    it('the page is not looked at: what CI must never do', () => {
      console.warn(`NOT RUN: there is no ${executable}, so no report was opened (apt-get install chromium)`)
      expect(process.env.CI).not.toBe('true')
    })
  })
else
  describe('the page of a report', () => {
    let files: Record<'run' | 'compare', string>

    beforeAll(async () => {
      browser = await chromium.launch({ executablePath: executable, args: flags })
      files = { run: await made('run', 'refill-hall'), compare: await made('compare', 'refill-hall') }
    }, 120_000)
    afterAll(() => browser?.close())

    it.each(['run', 'compare'] as const)(
      'of %s draws all its charts and asks for nothing',
      async (command) => {
        const { page, complaints, requests } = await opened(files[command])
        const figures = await page.$$('figure[data-chart]')
        await unfolded(page)
        const ink = await inkOf(page)
        expect(figures.length).toBeGreaterThanOrEqual(4)
        expect(ink).toHaveLength(figures.length)
        for (const { colours, share } of ink) {
          expect(colours).toBeGreaterThan(10)
          expect(share).toBeGreaterThan(0.02)
        }
        expect(complaints).toEqual([])
        expect(requests).toEqual([pathToFileURL(files[command]).href])
        await page.context().close()
      },
    )

    it.each([
      ['run', 390],
      ['run', 1440],
      ['compare', 390],
      ['compare', 1440],
    ] as const)('of %s does not run over the side at %i px', async (command, width) => {
      const { page } = await opened(files[command], { viewport: { width, height: 800 } })
      const sideways = () => page.evaluate(() => document.documentElement.scrollWidth)
      expect(await sideways()).toBeLessThanOrEqual(width)
      await unfolded(page)
      expect(await sideways()).toBeLessThanOrEqual(width)
      await page.context().close()
    })

    it('fits a telephone with the paths of the cases, which scroll nowhere', async () => {
      const { page } = await opened(files.run, { viewport: { width: 390, height: 800 } })
      await unfolded(page)
      const seen = page.locator('#moment .plan:visible')
      expect(await seen.count()).toBe(1)
      const [box, drawing] = [await seen.boundingBox(), await seen.locator('svg').boundingBox()]
      expect(drawing!.width).toBeLessThanOrEqual(box!.width)
      expect(await seen.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0)
      // letters as large as they were drawn: none shrinks to fit
      expect(drawing!.width).toBeGreaterThan(350)
      await page.context().close()
    })

    it('replays to the end of the recorded stretch: the cases that are there then, where they are', async () => {
      const { page, complaints } = await opened(files.run)
      const result = JSON.parse(
        readFileSync(path.join(path.dirname(files.run), 'result.json'), 'utf8'),
      ) as RunResult
      const { cases, held, to } = result.stretch!
      await unfolded(page)
      const picture = page.locator('.replay-picture')
      await picture.scrollIntoViewIfNeeded()
      await picture.focus()
      await expect
        .poll(() => page.locator('.replay-picture canvas').getAttribute('style'))
        .toContain('height')
      await page.keyboard.press('End')
      // what was recorded, counted by hand: those that have come and not left, and of these those on the line
      const there = cases.filter(({ path: way }) => way.at(-1)?.[2] == null)
      const onLine = there.filter(({ path: way }) => way.length > 0)
      expect(held.at(-1)![1]).toBe(there.length)
      expect(await page.locator('.replay-status').textContent()).toContain(
        `${onLine.length} cases on the line.`,
      )
      const clock = [to / 3600, (to / 60) % 60, to % 60].map((part) => Math.floor(part + 1e-6))
      expect(await page.locator('.replay-clock').textContent()).toContain(
        `${clock[0]}:${clock
          .slice(1)
          .map((part) => String(part).padStart(2, '0'))
          .join(':')}`,
      )
      const spots = await spotsAtEnd(page, result)
      expect(spots).toHaveLength(onLine.length)
      const scrubbed = await seenAt(page, spots)
      expect(scrubbed.at).toEqual(spots.map(({ colour }) => colour.toLowerCase()))
      expect(scrubbed.count).toBe(onLine.length)
      // played, the last seconds of it: it stops there by itself, at the same picture
      await page.keyboard.press('ArrowLeft')
      const before = await seenAt(page, spots)
      const play = page.locator('.replay-controls button').first()
      await play.click()
      await expect.poll(() => play.textContent()).toBe('Play')
      expect(await seenAt(page, spots)).toEqual(scrubbed)
      expect(before).not.toEqual(scrubbed)
      // the browser speaks of pictures that are read again and again: that does this test, and no page
      expect(complaints.filter((words) => !words.includes('getImageData'))).toEqual([])
      await page.context().close()
    })

    it('says something of what is pointed at', async () => {
      const { page } = await opened(files.run)
      await unfolded(page)
      const canvas = page.locator('figure[data-chart=states] canvas')
      await canvas.scrollIntoViewIfNeeded()
      const before = await canvas.screenshot()
      await canvas.hover({ position: { x: 300, y: 110 } })
      await expect.poll(async () => (await canvas.screenshot()).equals(before)).toBe(false)
      await page.context().close()
    })

    it('is told by keyboard where it is, and skips to the answer', async () => {
      const { page } = await opened(files.run)
      await page.keyboard.press('Tab')
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To the answer')
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineWidth)
      expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2)
      await page.keyboard.press('Enter')
      expect(new URL(page.url()).hash).toBe('#answer')
      const anchors = await page.$$eval('main a', (all) => all.map((each) => each.getAttribute('href')!))
      expect(anchors).toContain('#safety')
      // beside the page lies the one in which the line can be changed
      expect(anchors.filter((anchor) => !anchor.startsWith('#'))).toEqual(['try.html'])
      for (const anchor of anchors)
        if (anchor.startsWith('#')) expect(await page.$(anchor), anchor).not.toBeNull()
      await page.context().close()
    })

    it('is understood on one screen: verdict, four figures, picture, steps, safety, above all that is folded', async () => {
      const { page } = await opened(files.run)
      expect(await page.locator('details.fold[open]').count()).toBe(0)
      expect(await page.locator('.tile').count()).toBe(4)
      for (const part of ['.verdict', '.tiles', '.answer figure canvas', '.cards .next', '.under .caution']) {
        const box = await page.locator(part).boundingBox()
        expect(box!.y + box!.height, part).toBeLessThanOrEqual(900)
      }
      // all of it on three screens, folded: it was more than twenty
      expect(await page.evaluate(() => document.documentElement.scrollHeight / 900)).toBeLessThan(3)
      await page.context().close()
    })

    it('opens what a link names, all at once and closes it again, and lets words be found', async () => {
      const { page } = await opened(files.run)
      await page.click('a[href="#safety"]')
      await expect.poll(() => page.locator('#safety').getAttribute('open')).toBe('')
      expect(await page.locator('details.fold[open]').count()).toBe(1)
      await unfolded(page)
      expect(await page.locator('#open-all').textContent()).toBe('Close all')
      expect(await page.locator('#open-all').getAttribute('aria-expanded')).toBe('true')
      await page.click('#open-all')
      await expect.poll(() => page.locator('details.fold[open]').count()).toBe(0)
      await page.context().close()
    })

    it('moves nothing once it is seen', async () => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
      const page = await context.newPage()
      await page.goto(pathToFileURL(files.run).href)
      await page.waitForSelector('html[data-drawn=all]', { state: 'attached' })
      const moved = await page.evaluate(
        () =>
          new Promise<number>((resolve) => {
            let sum = 0
            new PerformanceObserver((list) => {
              for (const each of list.getEntries()) sum += (each as unknown as { value: number }).value
            }).observe({ type: 'layout-shift', buffered: true })
            setTimeout(() => resolve(sum), 500)
          }),
      )
      // what browsers call good is below 0.1
      expect(moved).toBeLessThan(0.1)
      await context.close()
    })

    it('makes cards of wide tables on a telephone, and cuts no cell', async () => {
      const { page } = await opened(files.run, { viewport: { width: 390, height: 800 } })
      await unfolded(page)
      const wide = await page.$$eval('details.fold .wide', (all) =>
        all
          .filter((each) => each.clientWidth > 0 && each.scrollWidth > each.clientWidth + 1)
          .map((each) => each.getAttribute('aria-label')),
      )
      expect(wide).toEqual([])
      expect(await page.locator('table.as-cards:visible').count()).toBeGreaterThan(3)
      await page.context().close()
    })

    it('draws its charts dark on a dark page, at once when that changes', async () => {
      const { page } = await opened(files.run, { colorScheme: 'dark' })
      const brightest = () =>
        page.$eval('.answer figure canvas', (each) => {
          const canvas = each as unknown as {
            width: number
            height: number
            getContext(kind: '2d'): CanvasRenderingContext2D
          }
          const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
          let light = 0
          let all = 0
          for (let at = 0; at < data.length; at += 4) {
            if (data[at + 3]! < 255) continue
            all++
            if (data[at]! > 200 && data[at + 1]! > 200 && data[at + 2]! > 200) light++
          }
          return light / all
        })
      const dark = await brightest()
      expect(dark).toBeGreaterThan(0)
      await page.emulateMedia({ colorScheme: 'light' })
      // letters and lines were light, and are dark now
      await expect.poll(brightest).not.toBe(dark)
      await page.context().close()
    })

    it('changes with a dark screen, and is light on paper', async () => {
      const { page } = await opened(files.run, { colorScheme: 'dark' })
      const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
      expect(await paper()).toBe('rgb(20, 24, 29)')
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
      expect(await paper()).toBe('rgb(255, 255, 255)')
      await page.context().close()
    })

    it('prints whole: from the answer to the last section, pictures included', async () => {
      const { page } = await opened(files.run)
      const { pages, text } = pdfText(await page.pdf({ format: 'A4' }))
      const result = JSON.parse(
        readFileSync(path.join(path.dirname(files.run), 'result.json'), 'utf8'),
      ) as RunResult
      const flowing = (words: string) => words.replace(/\s+/g, '')
      expect(pages).toBeGreaterThan(4)
      expect(pages).toBeLessThanOrEqual(8)
      expect(text).toContain(flowing(result.about!.purpose!))
      expect(text).toContain(flowing('Study checklist'))
      expect(text).toContain(flowing(result.made.repeat))
      // ff, fi and fl may be printed as one sign
      expect(text.normalize('NFKC')).toContain(result.made.scenario.sha256)
      await page.emulateMedia({ media: 'print' })
      for (const canvas of await page.locator('figure canvas').all())
        expect(await canvas.isVisible()).toBe(false)
      expect(
        await page.locator('figure img').evaluateAll((all) => all.every((each) => each.clientWidth > 300)),
      ).toBe(true)
      await page.context().close()
    })

    it('is read without scripts: all text, and pictures in place of charts', async () => {
      const { page } = await opened(files.run, { javaScriptEnabled: false })
      await expect.poll(() => page.locator('.verdict').isVisible()).toBe(true)
      expect(await page.locator('figure img').count()).toBeGreaterThanOrEqual(4)
      await page.locator('.answer figure img').waitFor()
      for (const fold of await page.locator('details.fold > summary').all()) await fold.click()
      for (const picture of await page.locator('figure img').all())
        expect(await picture.isVisible()).toBe(true)
      expect(await page.locator('#checklist td.todo').count()).toBeGreaterThan(0)
      expect(await page.locator('#repeat').isVisible()).toBe(true)
      // what only a script can do is not offered
      expect(await page.locator('#open-all').isVisible()).toBe(false)
      await page.context().close()
    })

    it('takes no name of a document for markup, of any length', async () => {
      const from = path.join(path.dirname(await made('run', 'parcel-corner')), 'result.json')
      const result = JSON.parse(readFileSync(from, 'utf8')) as RunResult
      const long = evil + 'x'.repeat(10_000)
      result.made.scenario.title = long
      result.notes.push(long)
      result.about!.purpose = long
      result.about!.findings.push({
        severity: 'error',
        code: evil,
        path: evil,
        message: long,
        basis: evil,
        fix: evil,
        design: evil,
      })
      const [first] = Object.keys(result.equipment)
      result.equipment = Object.fromEntries(
        Object.entries(result.equipment).map(([name, piece]) => [name === first ? evil : name, piece]),
      )
      result.held[0]!.place = evil
      const file = path.join(folder, 'evil.json')
      writeFileSync(file, JSON.stringify(result))
      const { code, err } = await call(['report', file], { cwd: folder })
      expect(code, err).toBe(0)
      const { page, complaints, requests } = await opened(path.join(folder, 'report.html'), {
        viewport: { width: 390, height: 800 },
      })
      expect(complaints).toEqual([])
      expect(requests).toHaveLength(1)
      expect(await page.locator('script').count()).toBe(2)
      expect(await page.locator('img:not([alt])').count()).toBe(0)
      expect(await page.locator('main svg[onload]').count()).toBe(0)
      expect(await page.locator('h1').textContent()).toContain(
        '<script>alert(1)</script> </script><img src=x onerror=alert(2)>',
      )
      const shown = (await page.locator('main').textContent()) ?? ''
      expect(/[\u202e\u200f]/.test(shown)).toBe(false)
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
      await unfolded(page)
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
      expect((await inkOf(page)).every(({ share }) => share > 0.02)).toBe(true)
      await page.context().close()
    })
  })
