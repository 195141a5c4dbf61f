/** The page to try a line in, in a real browser: change, text, undo, keep, reload, keyboard, narrow screens, and names that want to be markup. */
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
  unfold,
} from './try-page.js'

/** A name that would like to be more than that. */
const evil = '<img src=x onerror=alert(1)> </script><script>alert(2)</script> `code` "x'

const rate = (page: Page) => page.locator('[data-measure=throughput] .value').textContent()
const difference = (page: Page) => page.locator('[data-measure=throughput] .difference').textContent()
const verdict = (page: Page) => page.locator('.verdict').textContent()

describe.skipIf(!isThere)('the page to try a line in', { timeout: 4 * patience }, () => {
  let browser: Browser
  let file: string
  beforeAll(async () => {
    browser = await launched()
    file = await madeOf(demoText('soap-works'))
  }, patience)
  afterAll(() => browser?.close())

  it('says at once whether the line holds, asks nothing of anybody, and tells the difference that a change makes', async () => {
    const { page, complaints, requests, context } = await opened(browser, file)
    await figuresOf(page)
    expect(await verdict(page)).toMatch(/^(HOLDS|NOT YET SHOWN)/)
    expect(await page.locator('.caution').textContent()).toContain('isolate before reaching in')
    expect(await difference(page)).toBe('')
    await open(page, 'sealer')
    // by hand: at 5 m/min a case of 0.39 m with 0.3 m gap takes 8.3 s, which is 7.2 a minute
    await box(page, 'line.sealer.belt-speed').fill('5')
    await poll(() => difference(page)).toMatch(/worse, shown/)
    expect(await verdict(page)).toMatch(/^DOES NOT HOLD/)
    expect(Number(await rate(page))).toBeLessThan(7.5)
    expect(await page.locator('[data-measure=throughput] .came').textContent()).toMatch(/^as it came 9\./)
    expect(complaints).toEqual([])
    expect(requests.filter((each) => !each.startsWith('file:'))).toEqual([])
    await context.close()
  })

  it('says beside the field what is wrong, and Ctrl+Z takes it back', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    await open(page, 'sealer')
    const field = page.locator('[data-path="line.sealer.belt-speed"]')
    const speed = box(page, 'line.sealer.belt-speed')
    await speed.fill('fast')
    await poll(() => field.locator('.wrong').textContent()).toMatch(/Fix:/)
    expect(await speed.getAttribute('aria-invalid')).toBe('true')
    expect(await page.locator('.answer .foremost').textContent()).toContain('line.sealer.belt-speed')
    // what was known is still there, and says of what it is
    await poll(() => page.locator('.progress').textContent()).toMatch(/last text that could be simulated/)
    await speed.press('Control+z')
    await poll(() => speed.inputValue()).toBe('20')
    await poll(() => page.locator('.answer .foremost').count()).toBe(0)
    expect(await textOf(page)).toBe(demoText('soap-works'))
    await page.keyboard.press('Control+Shift+z')
    await poll(() => speed.inputValue()).toBe('fast')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('keeps fields and text together, comments too', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    await page.getByRole('button', { name: 'Text', exact: true }).click()
    const text = page.getByRole('textbox', { name: 'The scenario as text' })
    await open(page, 'infeed')
    await box(page, 'line.infeed.length').fill('11')
    await poll(() => text.textContent()).toContain('length: 11 m')
    // and the other way round
    await text.getByText('target', { exact: false }).first().click()
    await page.keyboard.press('End')
    await page.keyboard.press('Home')
    await page.keyboard.type('# mine ')
    await poll(() => textOf(page)).toContain('# mine target: 9 cases/min')
    await page.keyboard.press('Control+z')
    await open(page, 'Target and title')
    await poll(() => box(page, 'target').inputValue()).toBe('9')
    // a text stands in its field as it is read, whatever signs it has
    const title = box(page, 'title')
    expect(await title.inputValue()).toBe('Lindmoor soap works, line 2, early shift')
    await title.fill('Line 2: "early", #1')
    await poll(() => page.locator('h1').textContent()).toBe('Line 2: "early", #1')
    expect(await title.inputValue()).toBe('Line 2: "early", #1')
    await page.keyboard.press('Control+z')
    const now = await textOf(page)
    expect(now).toBe(demoText('soap-works').replace('length: 7 m, speed', 'length: 11 m, speed'))
    expect(complaints).toEqual([])
    await context.close()
  })

  it('keeps designs by name, compares them, takes them up again and drops them', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    await open(page, 'sealer')
    await box(page, 'line.sealer.belt-speed').fill('6')
    await page.getByLabel('Name of this design').fill('slow belts')
    await page.getByRole('button', { name: 'Keep this' }).click()
    await page.getByRole('button', { name: 'As it came' }).click()
    await poll(() => box(page, 'line.sealer.belt-speed').inputValue()).toBe('20')
    await page.getByRole('button', { name: 'Compare what is kept' }).click()
    const row = page.getByRole('table', { name: 'Kept designs' }).locator('tbody tr').last()
    await poll(() => row.textContent()).toMatch(/cases\/min.*-\d/)
    await page.getByRole('button', { name: 'Open slow belts' }).click()
    await poll(() => box(page, 'line.sealer.belt-speed').inputValue()).toBe('6')
    await page.getByRole('button', { name: 'Drop slow belts' }).click()
    expect(await page.getByRole('table', { name: 'Kept designs' }).count()).toBe(0)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('adds, doubles, moves and removes pieces, and says the change in the words of the command line', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    const pieces = () => page.locator('.chooser > .room').first().getByRole('button').allTextContents()
    await open(page, 'sealer')
    await page.getByRole('button', { name: 'Another beside it' }).click()
    await poll(() => textOf(page)).toContain('side-by-side: 2')
    // in the picture each has a name of its own, and all open the fields of the one in the file
    await open(page, 'infeed')
    const second = page.getByRole('button', { name: /^sealer 2: / })
    await second.click({ timeout: patience })
    expect(await page.locator('.fields > h2').textContent()).toBe('sealer')
    expect(await second.getAttribute('aria-pressed')).toBe('true')
    await page.keyboard.press('Control+z')
    await page.getByLabel('Add after it').selectOption('station')
    await page.getByRole('button', { name: 'Add', exact: true }).click()
    await poll(pieces).toEqual(['infeed', 'sealer', 'station', 'outfeed', 'palletiser'])
    await page.getByRole('button', { name: 'Move downstream' }).click()
    await poll(pieces).toEqual(['infeed', 'sealer', 'outfeed', 'station', 'palletiser'])
    await poll(() => page.locator('.progress').textContent()).toMatch(/^\d+ simulated shifts of each/)
    await page.getByRole('button', { name: 'Remove' }).click()
    await poll(pieces).toEqual(['infeed', 'sealer', 'outfeed', 'palletiser'])
    // what was added and taken away again leaves no trace
    expect(await textOf(page)).toBe(demoText('soap-works'))
    await open(page, 'infeed')
    await box(page, 'line.infeed.length').fill('9')
    await poll(() => page.locator('.progress').textContent()).toMatch(/^\d+ simulated shifts of each/)
    await page.locator('.copies > summary').click()
    const command = page.getByRole('textbox', { name: 'The command that gives these figures' })
    expect(await command.inputValue()).toMatch(
      /^tapeshift run \S+\.yaml --set ['"]?line\.infeed\.length=9 m['"]? --shifts \d+ --seed lindmoor$/,
    )
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is worked by keys alone, and shows where they are', async () => {
    const { page, complaints, context } = await opened(browser, file)
    await figuresOf(page)
    const piece = page.getByRole('button', { name: /^sealer: / })
    await piece.waitFor({ timeout: patience })
    // it lies over the piece in the picture
    const placeOf = (name: RegExp) => page.getByRole('button', { name }).boundingBox()
    const [before, own, behind] = [
      await placeOf(/^infeed: /),
      await placeOf(/^sealer: /),
      await placeOf(/^outfeed: /),
    ]
    expect(own!.x).toBeCloseTo(before!.x + before!.width, 0)
    expect(behind!.x).toBeCloseTo(own!.x + own!.width, 0)
    await piece.focus()
    await page.keyboard.press('Enter')
    const speed = box(page, 'line.sealer.belt-speed')
    await speed.waitFor()
    for (let presses = 0; presses < 80; presses++) {
      if (await speed.evaluate((each) => each === document.activeElement)) break
      await page.keyboard.press('Tab')
    }
    expect(await speed.evaluate((each) => each === document.activeElement)).toBe(true)
    expect(await speed.evaluate((each) => getComputedStyle(each).outlineWidth)).toBe('3px')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('PageDown')
    await poll(() => speed.inputValue().then(Number)).toBeLessThan(20)
    expect(await textOf(page)).toContain(`belt-speed: ${await speed.inputValue()} m/min`)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('loses nothing when it is loaded again, and never writes over what another page has kept', async () => {
    const first = await opened(browser, file)
    await figuresOf(first.page)
    await open(first.page, 'infeed')
    await box(first.page, 'line.infeed.length').fill('9')
    await poll(() => first.page.evaluate(() => Object.values(localStorage).join(''))).toContain('length: 9 m')
    await first.page.reload()
    await open(first.page, 'infeed')
    expect(await box(first.page, 'line.infeed.length').inputValue()).toBe('9')
    const second = await openedIn(first.context, file)
    await open(second.page, 'infeed')
    await box(second.page, 'line.infeed.length').fill('4')
    await poll(() => second.page.evaluate(() => Object.values(localStorage).join(''))).toContain(
      'length: 4 m',
    )
    await box(first.page, 'line.infeed.length').fill('8')
    const warning = first.page.getByText('Another page with this line')
    await warning.waitFor({ timeout: patience })
    expect(await first.page.evaluate(() => Object.values(localStorage).join(''))).not.toContain('length: 8 m')
    await first.page.getByRole('button', { name: 'Take what is there' }).click()
    await poll(() => box(first.page, 'line.infeed.length').inputValue()).toBe('4')
    expect([...first.complaints, ...second.complaints]).toEqual([])
    await first.context.close()
  })

  it('fits a telephone, with the answer in sight while a field is changed', async () => {
    const { page, complaints, context } = await opened(browser, file, {
      viewport: { width: 390, height: 844 },
    })
    await figuresOf(page)
    await open(page, 'palletiser')
    const widest = () => page.evaluate(() => document.documentElement.scrollWidth)
    expect(await widest()).toBe(390)
    const field = page.locator('.field input').last()
    await field.focus()
    const brief = page.locator('.brief')
    expect(await brief.textContent()).toMatch(/HOLD|SHOWN/)
    const { y, height } = (await brief.boundingBox())!
    expect(y).toBe(0)
    expect((await field.boundingBox())!.y).toBeGreaterThan(height)
    await page.getByRole('button', { name: 'Keep this' }).click()
    await unfold(page)
    await page.getByRole('button', { name: 'Text', exact: true }).click()
    expect(await widest()).toBe(390)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('takes no name for markup, nor a file that is no scenario', async () => {
    const title = demoText('soap-works').replace(/^title: .*$/m, `title: ${JSON.stringify(evil)}`)
    const { page, complaints, context } = await opened(browser, await madeOf(title))
    await figuresOf(page)
    await poll(() => page.locator('h1').textContent()).toContain('<img src=x onerror=alert(1)>')
    await page.getByRole('button', { name: 'Text', exact: true }).click()
    expect(await page.locator('img, b').count()).toBe(0)
    expect(await page.locator('script').count()).toBe(2)
    expect(complaints).toEqual([])
    await context.close()
    const start = await opened(browser, await madeOf())
    const wrongName = title.replace('  outfeed: {', `  ${JSON.stringify('out <b>x</b>')}: {`)
    await start.page.locator('input[type=file]').setInputFiles({
      ...{ name: 'wrong.yaml', mimeType: 'application/yaml', buffer: Buffer.from(wrongName) },
    })
    await poll(() => start.page.locator('.answer .foremost').textContent()).toContain('out <b>x</b>')
    await open(start.page, 'out <b>x</b>')
    expect(await start.page.locator('img, b').count()).toBe(0)
    expect(start.complaints).toEqual([])
    await start.context.close()
  })

  it('opens on a choice of lines where none is given', async () => {
    const { page, complaints, context } = await opened(browser, await madeOf())
    const choices = page.getByRole('button', { name: /^Open / })
    expect(await choices.count()).toBeGreaterThan(3)
    await choices.first().click()
    await figuresOf(page)
    await page.getByRole('button', { name: 'Another line' }).click()
    await page.locator('input[type=file]').setInputFiles({
      ...{ name: 'own.yaml', mimeType: 'application/yaml' },
      buffer: Buffer.from(demoText('soap-works').replace('Lindmoor soap works', 'My own works')),
    })
    await poll(() => page.locator('h1').textContent()).toContain('My own works')
    expect(complaints).toEqual([])
    await context.close()
  })
})
