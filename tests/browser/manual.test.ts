/** The page of the manual in a real browser: it opens by itself, asks for nothing, fits, is searched, and takes no HTML of a text. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, type BrowserContextOptions, chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { described } from '../../src/cli/described.js'
import { programs } from '../../src/cli/page-script.js'
import { manualPage } from '../../src/manual/page.js'
import { manualOf } from '../../src/manual/topics.js'
import { call } from '../cli/in-process.js'
import { program } from '../manual/program.js'

/** Where Debian's package has it. */
const executable = '/usr/bin/chromium'
const flags = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking']

let browser: Browser
let file = ''
const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-manual-'))

async function opened(page: string, options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options })
  const tab = await context.newPage()
  const complaints: string[] = []
  const requests: string[] = []
  tab.on('console', (message) => complaints.push(message.text()))
  tab.on('pageerror', (error) => complaints.push(String(error)))
  tab.on('dialog', (dialog) => {
    complaints.push(dialog.message())
    void dialog.dismiss()
  })
  tab.on('request', (request) => requests.push(request.url()))
  await tab.goto(pathToFileURL(page).href)
  return { tab, complaints, requests }
}

describe.skipIf(!existsSync(executable) && !process.env.CI)('the page of the manual', () => {
  beforeAll(async () => {
    const { code, out, cwd } = await call(['manual'])
    expect(code).toBe(0)
    expect(out).toBe(`Manual: ${path.join('out', 'manual.html')}\n`)
    file = path.join(cwd, 'out/manual.html')
    browser = await chromium.launch({ executablePath: executable, args: flags })
  }, 60_000)
  afterAll(() => browser?.close())

  it('names a file that it may write, and goes where it is told', async () => {
    expect((await call(['manual', '--out', ''])).code).toBe(2)
    const { cwd } = await call(['manual', '--out', 'a/b.html'])
    expect(readFileSync(path.join(cwd, 'a/b.html'), 'utf8')).toBe(readFileSync(file, 'utf8'))
    const inFolder = await call(['manual', '--out', 'handbook'])
    expect(inFolder.out).toBe(`Manual: ${path.join('handbook', 'manual.html')}\n`)
    expect(existsSync(path.join(inFolder.cwd, 'handbook/manual.html'))).toBe(true)
  })

  it.each([1440, 768, 390])('fits %i px, asks for nothing and complains of nothing', async (width) => {
    const { tab, complaints, requests } = await opened(file, { viewport: { width, height: 900 } })
    const [inner, scroll] = await tab.evaluate(() => [innerWidth, document.documentElement.scrollWidth])
    expect(scroll).toBeLessThanOrEqual(inner!)
    expect(requests).toEqual([pathToFileURL(file).href])
    expect(complaints).toEqual([])
  })

  it('has no link that leads nowhere, no id twice, and one heading of the first level', async () => {
    const { tab } = await opened(file, { javaScriptEnabled: false })
    const ids = await tab.$$eval('[id]', (all) => all.map((each) => each.id))
    expect(new Set(ids).size).toBe(ids.length)
    const links = await tab.$$eval('a', (all) => all.map((each) => each.getAttribute('href')!))
    expect(links.length).toBeGreaterThan(50)
    expect(links.filter((link) => !link.startsWith('#') || !ids.includes(link.slice(1)))).toEqual([])
    expect(await tab.$$eval('h1', (all) => all.length)).toBe(1)
    // what cannot search shows no box for it
    expect(await tab.isVisible('#sought')).toBe(false)
  })

  it('is searched: names first, all words, none where there is none', async () => {
    const { tab, complaints } = await opened(file)
    const hits = () => tab.$$eval('#hits li', (all) => all.map((each) => each.textContent ?? ''))
    await tab.fill('#sought', 'belt-speed')
    expect((await hits())[0]).toContain('line.PIECE.belt-speed')
    await tab.fill('#sought', 'wilson shares')
    for (const hit of await hits()) expect(hit).not.toBe('')
    await tab.fill('#sought', 'tape breaks')
    expect((await hits()).length).toBeGreaterThan(3)
    await tab.press('#sought', 'Enter')
    expect(await tab.$$eval('.found', (all) => all.length)).toBe(1)
    expect(new URL(tab.url()).hash).not.toBe('')
    await tab.fill('#sought', 'xyzzyplugh')
    expect([await hits(), await tab.textContent('#count')]).toEqual([[], 'Nothing found'])
    await tab.press('#sought', 'Escape')
    expect(await tab.inputValue('#sought')).toBe('')
    expect(complaints).toEqual([])
  })

  it.each(['light', 'dark'] as const)('can be read when it is %s', async (colorScheme) => {
    const { tab } = await opened(file, { colorScheme })
    const contrasts = await tab.$$eval('p, li, a, code, .subtitle, th, .label', (all) => {
      const channels = (colour: string) =>
        colour
          .match(/[\d.]+/g)!
          .slice(0, 3)
          .map(Number)
      const light = (colour: string) =>
        channels(colour)
          .map((each) => each / 255)
          .map((each) => (each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4))
          .reduce((sum, each, index) => sum + each * [0.2126, 0.7152, 0.0722][index]!, 0)
      const paperOf = (element: Element): string => {
        const { backgroundColor } = getComputedStyle(element)
        if (!/, 0\)$|transparent/.test(backgroundColor)) return backgroundColor
        return element.parentElement ? paperOf(element.parentElement) : 'rgb(255, 255, 255)'
      }
      return all.map((each) => {
        const [ink, paper] = [light(getComputedStyle(each).color), light(paperOf(each))]
        return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05)
      })
    })
    expect(contrasts.length).toBeGreaterThan(500)
    // WCAG 2.2, 1.4.3, AA
    expect(Math.min(...contrasts)).toBeGreaterThanOrEqual(4.5)
  })

  it('prints', async () => {
    const { tab } = await opened(file)
    const pdf = await tab.pdf({ format: 'A4' })
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-')
  })

  it('takes no HTML of a text for more than text', async () => {
    const evil =
      '# Evil\n\n<script>alert(1)</script>\n\na <img src=x onerror=alert(2)> b [x](javascript:alert(3)) `<b>` & "\n\n| <i>a</i> |\n|---|\n| <svg onload=alert(4)> |\n'
    const page = manualPage(
      manualOf(() => evil, described(program)),
      'evil </title><script>alert(5)</script>',
      programs().search,
    )
    const name = path.join(folder, 'evil.html')
    writeFileSync(name, page)
    const { tab, complaints } = await opened(name)
    expect(await tab.$$eval('main img, main svg, main script, main b, main i', (all) => all.length)).toBe(0)
    expect(await tab.$$eval('a[href^=javascript]', (all) => all.length)).toBe(0)
    expect(await tab.textContent('main')).toContain('<script>alert(1)</script>')
    expect(complaints).toEqual([])
  })
})
