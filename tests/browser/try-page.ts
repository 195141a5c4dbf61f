/** Pages to try a line in, opened in a real browser from a disk, with all that they asked for and complained of. */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core'
import { expect } from 'vitest'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'

/** Where Debian's package has it. */
const executable = '/usr/bin/chromium'
const flags = [
  ...['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
  ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
]
export const isThere = existsSync(executable)

/** Slow machines take long to simulate; nothing is held to a time here, ms. */
export const patience = 60_000

/** Asks again until it is so, as long as that may take. */
export const poll = (what: () => unknown) => expect.poll(what, { timeout: patience })

export const launched = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: executable, args: [...flags, ...more] })

/** A page that is open. */
export interface Opened {
  page: Page
  context: BrowserContext
  complaints: string[]
  requests: string[]
}

const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-try-'))
let count = 0

/** The page of a scenario text; without one that with a choice of lines. */
export async function madeOf(text?: string): Promise<string> {
  count++
  const out = path.join(folder, `try-${count}.html`)
  const file = path.join(folder, `line-${count}.yaml`)
  if (text !== undefined) writeFileSync(file, text)
  const { code, err } = await call(['try', ...(text === undefined ? [] : [file]), '--out', out], {
    cwd: demoFolder,
  })
  expect(code, err).toBe(0)
  return out
}

/** The page of a demo with all that lies beside it. */
export async function madeOfDemo(name: string): Promise<string> {
  count++
  const out = path.join(folder, `try-${count}.html`)
  const { code, err } = await call(['try', `${name}.yaml`, '--out', out], { cwd: demoFolder })
  expect(code, err).toBe(0)
  return out
}

export const demoText = (name: string): string => readFileSync(path.join(demoFolder, `${name}.yaml`), 'utf8')

/** Opens a page in a context, of its own where none is given, and listens to it. */
export async function openedIn(context: BrowserContext, file: string): Promise<Opened> {
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
    if (!/^(data|blob):/.test(request.url())) requests.push(request.url())
  })
  await page.goto(pathToFileURL(file).href)
  return { page, context, complaints, requests }
}

export async function opened(
  browser: Browser,
  file: string,
  options: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options })
  return openedIn(context, file)
}

/** Waits until there are figures. */
export const figuresOf = (page: Page) => page.waitForSelector('.looked .tile', { timeout: patience })

/** Opens the fields of a part. */
export const open = (page: Page, name: string) =>
  page
    .getByRole('navigation', { name: 'Parts of the line' })
    .getByRole('button', { name, exact: true })
    .click()

/** The box of a field by its path. */
export const box = (page: Page, at: string) =>
  page.locator(`[data-path="${at}"]`).locator('input[type=text], select').first()

/** The text of the scenario as it is now, as it would be saved. */
export async function textOf(page: Page): Promise<string> {
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the file' }).click()
  return readFileSync(await (await saved).path(), 'utf8')
}

/** Opens all that is folded away. */
export async function unfold(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const each of document.querySelectorAll<HTMLElement>('details:not([open]) > summary')) each.click()
  })
  await page.waitForTimeout(500)
}
