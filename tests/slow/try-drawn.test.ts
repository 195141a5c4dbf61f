/** Where inputs have evidence, their draws in the page in chromium are those of a run, and so is all that is made of them, to the last digit. */
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoText, isThere, launched, madeOf, openedIn, patience } from '../browser/try-page.js'
import { answered, expectAsInNode, listening } from '../browser/try-told.js'

describe.skipIf(!isThere)('figures of the page in chromium, inputs drawn', { timeout: 12 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it.each(['pet-food'])('of %s are those of a run', async (name) => {
    const context = await browser.newContext()
    await listening(context)
    const { page } = await openedIn(context, await madeOf(demoText(name)))
    const heard = await answered(page, 6 * patience, true)
    await context.close()
    expect(heard?.drawn?.after.drawn).toBeDefined()
    await expectAsInNode(heard!)
  })
})
