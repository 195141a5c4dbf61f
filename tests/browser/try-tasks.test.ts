/** What people come to the page for, done as they would: by the words that they see, without a terminal and without the text of a scenario. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  figuresOf,
  isThere,
  launched,
  madeOf,
  type Opened,
  open,
  opened,
  patience,
  poll,
  textOf,
} from './try-page.js'

/** The box of a value by its label, in the part of the line that is open. */
const value = (page: Page, label: string, heading?: string) => {
  const fields = page.getByRole('region', { name: /^Fields of / })
  const among = heading ? fields.getByRole('group', { name: heading, exact: true }) : fields
  return among.getByLabel(label, { exact: true }).first()
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()

const answer = (page: Page) => page.getByRole('region', { name: 'The answer' })

/** A figure of the answer by its words. */
const figure = (page: Page, words: string) =>
  answer(page).locator('.tile').filter({ hasText: words }).locator('.now')

const verdict = (page: Page) => answer(page).locator('.verdict').textContent()

/** Waits until the answer is of the line as it is now. */
const settled = (page: Page) =>
  poll(() => answer(page).locator('.progress').textContent()).toMatch(/^\d+ simulated shifts/)

describe.skipIf(!isThere)('what people come to the page for', { timeout: 4 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  /** A page on one of the lines to start from. */
  const started = async (title: string): Promise<Opened> => {
    const made = await opened(browser, await madeOf())
    await press(made.page, `Open ${title}`)
    await figuresOf(made.page)
    return made
  }

  it('one sealer or two, from a brief: three tables, two sizes, pallets, people with other work, three breaks', async () => {
    const { page, complaints, context } = await started('My sealing line')
    await open(page, 'Target and title')
    await value(page, 'target').fill('21')
    // three tables that pack 22 cases a minute together: one in 8.18 s each
    await open(page, 'packing')
    await value(page, 'mean').fill('8.18')
    await press(page, 'Add arrivals like these')
    await press(page, 'Add arrivals like these')
    await poll(() => textOf(page)).toMatch(/packing 3:/)
    // two sizes are there; tape of 2 inches, as it is sold
    await open(page, 'Tape')
    await value(page, 'width').fill('2 inch')
    await open(page, 'palletiser')
    await value(page, 'cases').fill('48')
    await value(page, 'stop').fill('12')
    await value(page, 'low').fill('1.6')
    await value(page, 'mode').fill('2')
    await value(page, 'high').fill('2.8')
    await open(page, 'operators')
    await value(page, 'people').fill('2')
    await page.getByText('more values, at their defaults').click()
    await press(page, 'Begin with an example of other work')
    await value(page, 'does', 'other work, 1').fill('cartons')
    await open(page, 'Shift')
    // three breaks are there already
    await value(page, 'for', 'breaks, 3').fill('10')
    await settled(page)
    await poll(() => verdict(page)).toMatch(/^DOES NOT HOLD/)
    await page.getByLabel('Name of this design').fill('one sealer')
    await press(page, 'Keep this')
    await open(page, 'sealer')
    await press(page, 'Another beside it')
    await settled(page)
    // three tables are let onto one conveyor: packers wait for each other where it is slow
    await poll(() => answer(page).textContent()).toMatch(
      /Arrivals from packing, packing 2 and packing 3 are blocked/,
    )
    await open(page, 'infeed')
    await value(page, 'speed').fill('40')
    await poll(() => verdict(page)).toMatch(/^HOLDS/)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('2-inch or 3-inch tape on one line, side by side in a table', async () => {
    const { page, complaints, context } = await started('Lindmoor soap works, line 2, early shift')
    await open(page, 'Tape')
    await value(page, 'width').fill('3 inch')
    // the heads of this sealer take tape of 36 to 50 mm
    await press(page, 'Make this change')
    await value(page, 'price').fill('59')
    await settled(page)
    await page.getByLabel('Name of this design').fill('3 inch')
    await press(page, 'Keep this')
    await press(page, 'Compare what is kept')
    const table = page.getByRole('table', { name: 'Kept designs' })
    await poll(() => table.getByRole('row').nth(1).textContent()).toMatch(/as it came.*cases\/min.*EUR/)
    const own = () => table.getByRole('row').nth(2).textContent()
    // wider tape as such makes no case slower; it costs more
    await poll(own).toMatch(/none shown|the same/)
    await poll(own).toMatch(/worse, shown/)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('which belt speed holds the rate, and what more conveyor to accumulate on does', async () => {
    const { page, complaints, context } = await started('Lindmoor soap works, line 2, early shift')
    await open(page, 'sealer')
    await value(page, 'belt speed').fill('6')
    await settled(page)
    await poll(() => verdict(page)).toMatch(/^DOES NOT HOLD/)
    // by keys, ten steps at a time, until it holds
    for (let step = 0; step < 6 && !(await verdict(page))?.startsWith('HOLDS'); step++) {
      await value(page, 'belt speed').press('PageUp')
      await settled(page)
    }
    expect(await verdict(page)).toMatch(/^HOLDS/)
    expect(Number(await value(page, 'belt speed').inputValue())).toBeLessThan(20)
    await open(page, 'infeed')
    await value(page, 'length').fill('20')
    await settled(page)
    await poll(() => answer(page).locator('.tile').first().locator('.difference').textContent()).not.toBe('')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('what it costs a month, and what limits the line', async () => {
    const { page, complaints, context } = await started('Lindmoor pet food, bagging hall')
    expect(await figure(page, 'A month costs').textContent()).toMatch(/[\d ]+.*EUR/)
    expect(await answer(page).textContent()).toMatch(/What limits the line.*pallets/)
    expect(complaints).toEqual([])
    await context.close()
  })
})
