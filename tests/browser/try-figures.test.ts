/**
 * The bundle that simulates in the page gives the figures that the command line gives: in chromium, on all demos. Shifts are the same to the last
 * digit; what is made of them by powers and logarithms of the machine, of which engines round the last digit as they like, to twelve.
 */
import { readdirSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import type { Told } from '../../src/try/study/messages.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { isThere, launched, madeOfDemo, openedIn, patience } from './try-page.js'

const shifts = 20

const demos = readdirSync(demoFolder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.replace('.yaml', ''))

/** Keeps what a page is told of by its workers. */
const listen = `
const Plain = Worker
window.told = []
window.Worker = class extends Plain {
  constructor(...given) {
    super(...given)
    this.addEventListener('message', ({ data }) => { if (data?.what === 'figures') window.told.push(data) })
  }
}`

/** The figures that a page was told first. */
async function firstTold(page: Page): Promise<Extract<Told, { what: 'figures' }>> {
  await expect.poll(() => page.evaluate('window.told.length'), { timeout: patience }).toBeGreaterThan(0)
  return (await page.evaluate('window.told[0]')) as Extract<Told, { what: 'figures' }>
}

/** Numbers to twelve digits. */
const told = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_, each) =>
    typeof each === 'number' ? Number(each.toPrecision(12)) : each,
  )

describe.skipIf(!isThere)('figures of the page in chromium', { timeout: 2 * patience }, () => {
  let browser: Browser
  beforeAll(async () => {
    browser = await launched()
  }, patience)
  afterAll(() => browser?.close())

  it.each(demos)('of %s are those of a run', async (name) => {
    const context = await browser.newContext()
    await context.addInitScript(listen)
    const { page } = await openedIn(context, await madeOfDemo(name))
    const { shifts: first, after } = await firstTold(page)
    await context.close()
    expect(first).toBe(shifts)
    const hasEvidence = (after.evidence?.length ?? 0) > 0
    const { code, out, err } = await call(
      [
        ...['run', `${name}.yaml`, '--shifts', String(shifts), '--json', '--no-files', '--workers', '1'],
        ...(hasEvidence ? ['--inputs', 'fixed'] : []),
      ],
      { cwd: demoFolder },
    )
    expect(code, err).toBe(0)
    const document = JSON.parse(out) as RunResult
    const figures = ({ measures, equipment, arrivals, crew }: RunResult) =>
      told({ measures, equipment, arrivals, crew })
    expect(figures(after)).toEqual(figures(document))
  })
})
