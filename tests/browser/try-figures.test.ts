/**
 * The bundle that simulates in the page gives the figures that the command line gives, to the last digit: in chromium, on all demos, and with
 * draws of the inputs where these have evidence.
 */
import { readdirSync } from 'node:fs'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoFolder } from '../demo.js'
import { isThere, launched, madeOfDemo, openedIn, patience } from './try-page.js'
import { answered, expectAsInNode, listening } from './try-told.js'

const demos = readdirSync(demoFolder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.replace('.yaml', ''))

describe.skipIf(!isThere)('figures of the page in chromium', { timeout: 2 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it.each(demos)('of %s are those of a run', async (name) => {
    const context = await browser.newContext()
    await listening(context)
    const { page } = await openedIn(context, await madeOfDemo(name))
    const heard = await answered(page, patience)
    await context.close()
    expect(heard?.figures?.shifts).toBe(20)
    await expectAsInNode(heard!)
  })
})
