/** What a page to try a line in asks of its workers and is told by them, beside what the same question gives in Node. */
import type { BrowserContext, Page } from 'playwright-core'
import { expect } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { run } from '../../src/questions/run/study.js'
import type { Problem } from '../../src/scenario/problems.js'
import { readScenario } from '../../src/scenario/read.js'
import { besideOf } from '../../src/try/study/beside.js'
import type { Ask, Figures, Told } from '../../src/try/study/messages.js'
import { problemsOf } from '../../src/try/study/problems-of.js'

/** The last ask about the line, and the first that was told of it of each sort. */
export interface Heard {
  ask: Ask & { what: 'try' }
  figures?: Figures
  drawn?: Figures
  problems?: Extract<Told, { what: 'problems' }>
}

/** Kept by the page itself, in `window.heard`. */
const keep = `
const Plain = Worker
window.Worker = class extends Plain {
  constructor(...given) {
    super(...given)
    this.addEventListener('message', ({ data }) => {
      const { heard } = window
      if (heard?.ask.number === data?.number) heard[data.what] ??= data
    })
  }
  postMessage(sent, ...more) {
    if (sent.what === 'try') window.heard = { ask: sent }
    super.postMessage(sent, ...more)
  }
}`

/** From now on the pages of a context keep what they hear. */
export const listening = (context: BrowserContext) => context.addInitScript(keep)

const heardBy = (page: Page) => page.evaluate('window.heard ?? null') as Promise<Heard | null>

/** What a page has heard of its last ask, once that is answered, with draws of the inputs where `isDrawn`; null where that takes longer than `within`, ms. */
export async function answered(page: Page, within: number, isDrawn = false): Promise<Heard | null> {
  const until = Date.now() + within
  do {
    // an edit is asked about once it has been quiet for a moment
    await page.waitForTimeout(200)
    const heard = await heardBy(page)
    if (heard?.problems || (isDrawn ? heard?.drawn : heard?.figures)) return heard
  } while (Date.now() < until)
  return null
}

/** What Node makes of the same ask: the document of a run of so many shifts, or why there is none. */
async function inNode(
  { after, home: { name, files } }: Heard['ask'],
  shifts: number | undefined,
  isDrawn = false,
): Promise<RunResult | readonly Problem[]> {
  try {
    const scenario = readScenario(after, { name, shifts }, besideOf(files))
    const asGiven = scenario.evidence.length > 0 && !isDrawn
    return (await run(scenario, { moment: false, ...(asGiven ? { inputs: 'fixed' } : {}) })).document
  } catch (error) {
    return problemsOf(error, name) ?? [String(error) as never]
  }
}

/** As it is sent, without what names the program that made it. */
const sent = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, each) => (key === 'node' ? undefined : each)))

/** Holds what a page was told of its text against what Node makes of it: the whole document, to the last digit. */
export async function expectAsInNode({ ask, figures, drawn, problems }: Heard): Promise<void> {
  if (figures) expect(sent(figures.after)).toEqual(sent(await inNode(ask, figures.shifts)))
  else if (problems) expect(sent(problems.problems)).toEqual(sent(await inNode(ask, undefined)))
  if (drawn) expect(sent(drawn.after)).toEqual(sent(await inNode(ask, drawn.shifts, true)))
}
