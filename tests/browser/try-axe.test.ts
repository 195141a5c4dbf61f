/** What axe-core says of the page to try a line in, by day and by night, at every state that people come to. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
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
  unfold,
} from './try-page.js'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What it calls serious or worse: rule and element. */
async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe)
  const { violations } = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as {
    violations: { id: string; impact: string; nodes: { html: string }[] }[]
  }
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
}

describe.skipIf(!isThere)('axe-core and the page to try a line in', { timeout: 4 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it.each(['light', 'dark'] as const)('finds nothing serious, %s', async (colorScheme) => {
    const { page, context } = await opened(browser, await madeOf(demoText('soap-works')), {
      ...{ colorScheme, bypassCSP: true, reducedMotion: 'reduce' },
    })
    await figuresOf(page)
    await open(page, 'sealer')
    await page.getByRole('button', { name: 'Keep this' }).click()
    await page.getByRole('button', { name: 'Text', exact: true }).click()
    await unfold(page)
    expect(await serious(page)).toEqual([])
    // a change beside the line as it came, designs compared, what can be copied, words of a field
    await box(page, 'line.sealer.belt-speed').fill('12')
    await page.getByRole('button', { name: 'What belt speed means' }).click()
    await page.getByRole('button', { name: 'Compare what is kept' }).click()
    await page.locator('.differs').first().waitFor({ timeout: patience })
    await page.locator('.looked .difference .n').first().waitFor({ timeout: patience })
    await page.locator('.copies > summary').click()
    expect(await serious(page)).toEqual([])
    await page.keyboard.press('Escape')
    // words that the text may have at that place
    await page.getByRole('textbox', { name: 'The scenario as text' }).click()
    await page.keyboard.press('Control+Home')
    await page.keyboard.press('Control+Space')
    expect(await serious(page)).toEqual([])
    await page.keyboard.press('Escape')
    await box(page, 'line.sealer.belt-speed').fill('fast')
    await page.locator('.answer .foremost').waitFor({ timeout: patience })
    expect(await serious(page)).toEqual([])
    await context.close()
  })

  it('finds nothing serious on the choice of lines', async () => {
    const { page, context } = await opened(browser, await madeOf(), { bypassCSP: true })
    await page
      .getByRole('button', { name: /^Open / })
      .first()
      .waitFor()
    expect(await serious(page)).toEqual([])
    await context.close()
  })
  it('finds nothing serious while the first shifts are simulated, where the worker fails, on a narrow screen', async () => {
    const { page, context } = await opened(browser, await madeOf(demoText('pet-food')), {
      ...{ bypassCSP: true, viewport: { width: 390, height: 844 } },
    })
    expect(await serious(page)).toEqual([])
    await figuresOf(page)
    await page.getByLabel('All else').selectOption('arrivals.table-1')
    await unfold(page)
    expect(await serious(page)).toEqual([])
    await context.close()
    const failing = await browser.newContext({ bypassCSP: true })
    await failing.addInitScript(`
      const Plain = Worker
      window.Worker = class extends Plain {
        postMessage() { setTimeout(() => this.dispatchEvent(new ErrorEvent('error', { message: 'no room' }))) }
      }`)
    const failed = await openedIn(failing, await madeOf(demoText('soap-works')))
    await failed.page.locator('.answer').getByText('Something went wrong').waitFor({ timeout: patience })
    expect(await serious(failed.page)).toEqual([])
    await failing.close()
  })
})
