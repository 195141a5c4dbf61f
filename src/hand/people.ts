/** People by hand: how much of their time the stops of the line and the flaps ask for. */
import { has } from '../kinds/traits.js'
import { meanOf } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import { operatorLoad, type Task } from '../trade/workload.js'
import type { LineHand } from './line.js'
import { firstWith } from './pace.js'
import { stopsPerShift } from './stop-counts.js'

/** What is asked of one crew. Shares of their time. */
export interface CrewLoad {
  name: string
  people: number
  /** Walking and working, without the allowance, while they are there: what a run calls busy. */
  busy: number
  /** Folding flaps by hand included. */
  occupied: number
  /** The same with the allowance for personal time and fatigue. */
  load: number
}

/**
 * Load of each crew: every task goes to the first crew of the file that has its skill, as a run calls them first. How
 * tasks get in each other's way is left to simulation.
 */
export function crewLoads(scenario: Scenario, line: LineHand): CrewLoad[] {
  const tasks = new Map<string, Task[]>()
  const folding = new Map<string, Task[]>()
  const give = (to: Map<string, Task[]>, crew: string, task: Task) =>
    to.set(crew, [...(to.get(crew) ?? []), task])
  for (const piece of line.pieces) {
    for (const { skill, count, work } of stopsPerShift(scenario, line, piece)) {
      const crew = skill === null ? null : firstWith(scenario, skill)
      if (crew) give(tasks, crew.name, { rate: count, time: work + crew.walk })
    }
    const keys = scenario.line[piece.name]!
    if (!has(keys, 'tapes') || keys.flaps['folded-by'] !== 'people') continue
    const folder = Object.entries(scenario.crew).find(([, crew]) => crew['stands-at'] === piece.name)
    if (folder) give(folding, folder[0], { rate: piece.perShift, time: meanOf(keys.flaps.time) })
  }
  return Object.entries(scenario.crew).map(([name, { people, breaks }]) => {
    const away = (breaks ?? scenario.shift.breaks).reduce((total, pause) => total + pause.for, 0)
    const there = line.span - away
    const perSecond = (all: readonly Task[]) => all.map((task) => ({ ...task, rate: task.rate / there }))
    const stops = perSecond(tasks.get(name) ?? [])
    const all = [...stops, ...perSecond(folding.get(name) ?? [])]
    return {
      name,
      people,
      busy: operatorLoad(stops, people, 0),
      occupied: operatorLoad(all, people, 0),
      load: operatorLoad(all, people),
    }
  })
}
