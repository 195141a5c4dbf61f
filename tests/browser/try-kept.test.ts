/** What a browser keeps of the page to try a line in: said when it comes back, when another page has kept something else, and when it cannot be kept. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  box,
  demoText,
  figuresOf,
  isThere,
  launched,
  madeOf,
  open,
  opened,
  openedIn,
  patience,
  poll,
  textOf,
} from './try-page.js'

const kept = (page: Page) => page.evaluate(() => Object.values(localStorage).join(''))
const warning = (page: Page) => page.locator('.cautions[role=status]')

async function lengthen(page: Page, metres: string): Promise<void> {
  await open(page, 'infeed')
  await box(page, 'line.infeed.length').fill(metres)
}

describe.skipIf(!isThere)('what is kept of the page to try a line in', { timeout: 4 * patience }, () => {
  let browser: Browser
  let file: string
  beforeAll(async () => {
    browser = await launched()
    file = await madeOf(demoText('soap-works'))
  }, patience)
  afterAll(() => browser?.close())

  it('comes back with a line that says so, and a way back to the file that can be undone', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    // what is as it came is not kept: there is nothing to lose
    expect(await page.locator('.restored').count()).toBe(0)
    expect(await kept(page)).toBe('')
    await lengthen(page, '9')
    await poll(() => kept(page)).toContain('length: 9 m')
    await page.reload()
    await poll(() => page.locator('.restored').textContent()).toMatch(
      /^Your changes of \d\d:\d\d were kept\./,
    )
    expect(await textOf(page)).toContain('length: 9 m')
    await page.getByRole('button', { name: 'Start again from the file' }).click()
    expect(await textOf(page)).toBe(demoText('soap-works'))
    expect(await page.locator('.restored').count()).toBe(0)
    await page.keyboard.press('Control+z')
    expect(await textOf(page)).toContain('length: 9 m')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is that of the page that was changed first, until somebody chooses; one that is only looked at writes nothing', async () => {
    const first = await opened(browser, file)
    await figuresOf(first.page)
    await lengthen(first.page, '9')
    await poll(() => kept(first.page)).toContain('length: 9 m')
    const before = await kept(first.page)
    const second = await openedIn(first.context, file)
    await figuresOf(second.page)
    await second.page.waitForTimeout(1000)
    expect(await kept(first.page)).toBe(before)
    expect(await warning(first.page).count()).toBe(0)
    await lengthen(second.page, '4')
    await poll(() => warning(first.page).textContent()).toContain('Another page with this line')
    await lengthen(first.page, '8')
    await first.page.waitForTimeout(1000)
    expect(await kept(first.page)).toContain('length: 4 m')
    await first.page.getByRole('button', { name: 'Keep what is here' }).click()
    await poll(() => kept(first.page)).toContain('length: 8 m')
    await poll(() => warning(second.page).textContent()).toContain('What is changed here is not kept')
    expect([...first.complaints, ...second.complaints]).toEqual([])
    await first.context.close()
  })

  it('is kept of each line to start from, also of one that is left at once', async () => {
    const { page, complaints, context } = await opened(browser, await madeOf())
    const start = async (title: string) => {
      await page.getByRole('button', { name: `Open ${title}`, exact: true }).click()
      await open(page, 'infeed')
    }
    const another = () => page.getByRole('button', { name: 'Another line' }).click()
    const infeed = box(page, 'line.infeed.length')
    await start('My sealing line')
    await infeed.fill('9')
    await another()
    await start('Lindmoor soap works, line 2, early shift')
    expect(await page.locator('.restored').count()).toBe(0)
    await infeed.fill('8')
    await another()
    await start('My sealing line')
    expect(await infeed.inputValue()).toBe('9')
    await poll(() => page.locator('.restored').textContent()).toMatch(/were kept/)
    // what was changed last is open when the page is loaded again
    await page.reload()
    await open(page, 'infeed')
    expect(await infeed.inputValue()).toBe('8')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is nothing where there is no storage, and no more where that is full: both are said', async () => {
    const none = await browser.newContext()
    await none.addInitScript(
      `Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })`,
    )
    const { page, complaints } = await openedIn(none, file)
    await poll(() => warning(page).textContent()).toContain(
      'This browser keeps nothing for the page: save the file',
    )
    await none.close()
    const full = await opened(browser, file)
    await full.page.evaluate(() =>
      localStorage.setItem('tapeshift try of another line', ' '.repeat(5_242_000)),
    )
    await lengthen(full.page, '9')
    await poll(() => warning(full.page).textContent()).toContain('storage is full')
    await full.page.getByRole('button', { name: 'Drop what is kept of other lines' }).click()
    await poll(() => kept(full.page)).toContain('length: 9 m')
    expect(await warning(full.page).count()).toBe(0)
    expect([...complaints, ...full.complaints]).toEqual([])
    await full.context.close()
  })
})
