/** A line of 500 pieces and one of 10,000 kinds of cases in the page to try a line in: what is typed arrives, and what cannot be shown is said. */
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { box, demoText, isThere, launched, madeOf, openedIn, patience, textOf } from '../browser/try-page.js'

const many = (count: number, entry: (number: number) => string): string =>
  Array.from({ length: count }, (_, index) => `${entry(index + 1)}\n`).join('')

const ofPieces = demoText('soap-works').replace(
  '  outfeed: {',
  `${many(496, (k) => `  belt ${k}: {type: conveyor, carries: belt, length: 1 m, speed: 24 m/min, spacing: 20 mm}`)}  outfeed: {`,
)
const ofKinds = demoText('soap-works')
  .replace(/^closure:[\s\S]*?\n\n/m, '')
  .replace(
    /^cases:[\s\S]*?\n\n/m,
    `cases:\n${many(10_000, (k) => `  kind ${k}: {share: 1, length: 390 mm, width: 290 mm, height: 230 mm, weight: 8 kg}`)}\n`,
  )

/** Keeps how long the longest tasks of the page's thread took, ms: told, not held to, for machines differ. */
const timing = `
window.tasks = []
new PerformanceObserver((list) => { for (const { duration } of list.getEntries()) window.tasks.push(duration) })
  .observe({ type: 'longtask', buffered: true })`

const longest = (page: Page) => page.evaluate('Math.round(Math.max(0, ...window.tasks.splice(0)))')

async function typeInto(page: Page, words: string): Promise<void> {
  await page.getByRole('button', { name: 'Text', exact: true }).click()
  const text = page.getByRole('textbox', { name: 'The scenario as text' })
  // the picture of a long line may come in between: what is pressed goes to the text, wherever that stands
  await text.press('Control+Home')
  await text.pressSequentially(words)
}

describe.skipIf(!isThere)('the page to try a line in', { timeout: 6 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it('of 500 pieces has them all, and takes a value and a text', async () => {
    const context = await browser.newContext()
    await context.addInitScript(timing)
    const { page, complaints } = await openedIn(context, await madeOf(ofPieces))
    // so many stand in a list
    await page.getByLabel('Pieces of the line').selectOption('belt 496')
    const opening = await longest(page)
    await box(page, 'line.belt 496.length').fill('2')
    expect(await textOf(page)).toContain('belt 496: {type: conveyor, carries: belt, length: 2 m,')
    const field = await longest(page)
    await typeInto(page, '# mine ')
    expect(await textOf(page)).toMatch(/^# mine # yaml/)
    console.log('500 pieces, longest task, ms:', { opening, field, text: await longest(page) })
    expect(complaints).toEqual([])
    await context.close()
  })

  it('of 10,000 kinds says that there are no fields, and takes a text', async () => {
    const context = await browser.newContext()
    await context.addInitScript(timing)
    const { page, complaints } = await openedIn(context, await madeOf(ofKinds))
    expect(await page.locator('.edit').textContent()).toMatch(/^This text has 852 thousand letters\./)
    const opening = await longest(page)
    await typeInto(page, '# mine ')
    expect(await textOf(page)).toBe(`# mine ${ofKinds}`)
    console.log('10,000 kinds, longest task, ms:', { opening, text: await longest(page) })
    expect(complaints).toEqual([])
    await context.close()
  })
})
