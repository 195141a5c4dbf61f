/** An executor of several studies at once: a scenario has the same number in all of them, so that simulators build its line once. */
import type { Scenario } from '../../scenario/schema.js'
import type { Executor } from '../../shifts/executor.js'
import type { Results, Task } from '../../shifts/work.js'

/** Scenarios that are known again, and warm-ups that are kept. */
const mostScenarios = 300
const mostWarmUps = 4

/** `executor`, for studies that each count their designs from 0. Warm-ups that were found once are kept. */
export function numbered(executor: Executor): Executor {
  const ofObject = new WeakMap<Scenario, number>()
  const ofText = new Map<string, number>()
  const series = new Map<number, Map<string, Promise<unknown>>>()
  let next = 0
  const numberOf = (scenario: Scenario): number => {
    const known = ofObject.get(scenario)
    if (known !== undefined) return known
    // the line does not depend on how many of its shifts are asked for
    const text = JSON.stringify({ ...scenario, study: null })
    const number = ofText.get(text) ?? next++
    ofText.delete(text)
    ofText.set(text, number)
    if (ofText.size > mostScenarios) ofText.delete(ofText.keys().next().value!)
    ofObject.set(scenario, number)
    return number
  }
  const seriesOf = (task: Task & { what: 'series' }): Promise<unknown> => {
    const { design, seed, from, to, instants } = task
    const kept = series.get(design) ?? new Map<string, Promise<unknown>>()
    series.delete(design)
    series.set(design, kept)
    if (series.size > mostWarmUps) series.delete(series.keys().next().value!)
    const key = JSON.stringify([seed, from, to, instants])
    const known = kept.get(key) ?? executor.work(task)
    kept.set(key, known)
    // what was cut off is asked for again
    known.catch(() => kept.delete(key))
    return known
  }
  return {
    size: executor.size,
    work<Asked extends Task>(task: Asked) {
      const own = { ...task, design: numberOf(task.scenario) }
      return (own.what === 'series' ? seriesOf(own) : executor.work(own)) as Promise<Results<Asked>>
    },
    close: () => executor.close(),
  }
}
