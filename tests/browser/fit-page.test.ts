/** The page of a fit in a real browser: it draws, asks for nothing, fits a telephone, and takes no name of a record for markup. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { call } from '../cli/in-process.js'
import { type Stop, shiftRows, stopRows } from '../questions/fits.js'
import { recordText } from '../record/texts.js'

/** Where Debian's package has it. */
const executable = '/usr/bin/chromium'

/** Names that would like to be more than that. */
const evil = [
  '<script>alert(1)</script>',
  '</script><img src=x onerror=alert(2)>',
  '<!-- <script>',
  '\u202eturned',
  '" onmouseover="alert(4)',
  'x'.repeat(10_000),
]

/** In a cell without quotes. */
const unquoted = (name: string) => name.replaceAll(';', ',').replaceAll('"', "'")

/** Jams of both sorts and breakdowns on ten days, some stops of odd names among them, and a scanner of two hours. */
function folderOf(): string {
  const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-fit-page-'))
  const jams = Array.from(
    { length: 60 },
    (_, n): Stop => [1 + (n % 10), 22_000 + 450 * n, 30 + ((n * 41) % 97)],
  )
  const motor = Array.from(
    { length: 12 },
    (_, n): Stop => [1 + (n % 10), 50_000, 200 + ((n * 53) % 170), 'Motor'],
  )
  const odd = evil.flatMap((name, n): Stop[] => [
    [1 + n, 23_000, 60, unquoted(name), 'Kleber'],
    [1 + n, 24_000, 60, 'Stau', unquoted(name).replaceAll('/', '-')],
  ])
  const second = (n: number) => new Date(Date.UTC(2026, 0, 1, 6) + n * 1000).toISOString().slice(0, 19)
  const cases = Array.from({ length: 1000 }, (_, n) => second(7 * n + ((n * 37) % 5)))
  const texts = {
    'plant.yaml': recordText({
      times: 'iso',
      'rounded-to': '0 s',
      title: JSON.stringify(evil.join(' ').slice(0, 190)),
      cases: '{file: cases.csv, at: Zeit, source: packing}',
    }),
    'shifts.csv': shiftRows(10),
    'stops.csv': stopRows([...jams, ...motor, ...odd]),
    'cases.csv': `Zeit\n${cases.join('\n')}\n`,
  }
  for (const [name, text] of Object.entries(texts)) writeFileSync(path.join(cwd, name), text)
  return cwd
}

if (!existsSync(executable))
  describe('without a browser', () => {
    it('the page is not looked at: what CI must never do', () => {
      console.warn(`NOT RUN: there is no ${executable}, so no page was opened (apt-get install chromium)`)
      expect(process.env.CI).not.toBe('true')
    })
  })
else
  describe('the page of a fit', () => {
    let browser: Browser
    let file: string
    beforeAll(async () => {
      const cwd = folderOf()
      const { code, err } = await call(['fit', 'plant.yaml', '--quiet', '--out', 'out'], { cwd })
      expect(code, err).toBe(0)
      file = path.join(cwd, 'out', 'report.html')
      browser = await chromium.launch({
        executablePath: executable,
        args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
      })
    }, 60_000)
    afterAll(() => browser?.close())

    /** Opens it, with all that it complained of and asked for. */
    async function opened(width: number) {
      const context = await browser.newContext({ viewport: { width, height: 800 } })
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
      await page.waitForSelector('html[data-drawn=all]', { state: 'attached' })
      return { page, complaints, requests }
    }

    it.each([390, 1440])(
      'draws all its charts at %i px, runs over no side and asks for nothing',
      async (width) => {
        const { page, complaints, requests } = await opened(width)
        const charts = await page.$$eval('figure[data-chart]', (all) =>
          all.map((each) => each.getAttribute('data-chart')),
        )
        expect(charts).toEqual(
          expect.arrayContaining([
            'lengths-line-sealer-jams-clear',
            'survival-line-sealer-jams-clear',
            'trend-line-sealer-jams-chance',
            'hours-line-sealer-jams-chance',
            'quantiles-line-sealer-jams-clear',
            'survival-arrivals-packing-time-between',
          ]),
        )
        const inked = await page.$$eval('figure[data-chart] canvas', (all) =>
          all.map((each) => {
            const canvas = each as HTMLCanvasElement
            const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
            return data.filter((value, at) => at % 4 === 3 && value > 0).length / (data.length / 4)
          }),
        )
        expect(inked).toHaveLength(charts.length)
        for (const share of inked) expect(share).toBeGreaterThan(0.02)
        expect(complaints).toEqual([])
        expect(requests).toEqual([pathToFileURL(file).href])
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
        await page.context().close()
      },
    )

    it('takes no name of a record for markup', async () => {
      const { page, complaints } = await opened(390)
      expect(readFileSync(file, 'utf8')).not.toContain('\u202e')
      expect(await page.locator('script').count()).toBe(2)
      expect(await page.locator('img:not([alt])').count()).toBe(0)
      expect(await page.locator('[onmouseover], [onerror]').count()).toBe(0)
      const text = (await page.locator('main').textContent()) ?? ''
      expect(text).toContain('<script>alert(1)</script>')
      expect(text).not.toContain('x'.repeat(300))
      expect(complaints).toEqual([])
      await page.context().close()
    })
  })
