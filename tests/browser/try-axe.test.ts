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
})
