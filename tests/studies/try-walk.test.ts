/** Ten thousand random edits never leave the page to try a line in without an answer. */
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoText, figuresOf, isThere, launched, madeOf, opened, patience } from '../browser/try-page.js'
import { comesBack, walk } from '../browser/try-walk.js'

describe.skipIf(!isThere)('random edits in the page', { timeout: 60 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it('never give a blank answer, a figure that is none, or an error', async () => {
    const { page, complaints, context } = await opened(browser, await madeOf(demoText('soap-works')))
    await figuresOf(page)
    expect(await walk(page, 1, 10_000)).toEqual([])
    await comesBack(page)
    expect(complaints).toEqual([])
    await context.close()
  })
})
