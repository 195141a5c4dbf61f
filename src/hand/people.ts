/** People by hand: how much of their time the stops of the line, the flaps and other work ask for. */
import { has } from '../kinds/traits.js'
import { meanOf } from '../scenario/law.js'
import { otherWorkOf } from '../scenario/other-work.js'
import type { Scenario } from '../scenario/schema.js'
import { operatorLoad, type Task } from '../trade/workload.js'
import type { LineHand } from './line.js'
import { firstWith } from './pace.js'
import { plannedOf } from './planned.js'
import { stopsPerShift } from './stop-counts.js'

/** What is asked of one crew. Shares of their time. */
export interface CrewLoad {
  name: string
  people: number
  /** Walking and working, without the allowance, while they are there: what a run calls busy. */
  busy: number
  /** Folding flaps by hand included. */
  occupied: number
  /** Other work beside the line. */
  other: number
  /** All of it with the allowance for personal time and fatigue. */
  load: number
}

type Give = (crew: string, task: Task) => void

const byCrew = (): { of: Map<string, Task[]>; give: Give } => {
  const of = new Map<string, Task[]>()
  return { of, give: (crew, task) => of.set(crew, [...(of.get(crew) ?? []), task]) }
}

/** Gives stops and planned work of a piece to those who are called, as often as a shift has them. */
function giveStops(scenario: Scenario, line: LineHand, piece: LineHand['pieces'][number], give: Give): void {
  for (const { skill, count, work } of stopsPerShift(scenario, line, piece)) {
    const crew = skill === null ? null : firstWith(scenario, skill)
    if (crew) give(crew.name, { rate: count, time: work + crew.walk })
  }
  for (const { needs, count, time } of plannedOf(scenario, scenario.line[piece.name]!))
    if (needs !== null) give(needs, { rate: count, time: time + meanOf(scenario.crew[needs]!.walk) })
}

/**
 * Load of each crew: every task goes to the first crew of the file that has its skill, as a run calls them first. How
 * tasks get in each other's way is left to simulation.
 */
export function crewLoads(scenario: Scenario, line: LineHand): CrewLoad[] {
  const [tasks, folding] = [byCrew(), byCrew()]
  for (const piece of line.pieces) {
    giveStops(scenario, line, piece, tasks.give)
    const keys = scenario.line[piece.name]!
    if (!has(keys, 'tapes') || keys.flaps['folded-by'] !== 'people') continue
    const folder = Object.entries(scenario.crew).find(([, crew]) => crew['stands-at'] === piece.name)
    if (folder) folding.give(folder[0], { rate: piece.perShift, time: meanOf(keys.flaps.time) })
  }
  return Object.entries(scenario.crew).map(([name, crew]) => {
    const { people, breaks } = crew
    const away = (breaks ?? scenario.shift.breaks).reduce((total, pause) => total + pause.for, 0)
    const there = line.span - away
    const perSecond = (all: readonly Task[]) => all.map((task) => ({ ...task, rate: task.rate / there }))
    const stops = perSecond(tasks.of.get(name) ?? [])
    const all = [...stops, ...perSecond(folding.of.get(name) ?? [])]
    const others = otherWorkOf(crew).map(
      ({ every, takes }): Task => ({ rate: 1 / meanOf(every), time: meanOf(takes) }),
    )
    return {
      name,
      people,
      busy: operatorLoad(stops, people, 0),
      occupied: operatorLoad(all, people, 0),
      other: operatorLoad(others, people, 0),
      load: operatorLoad([...all, ...others], people),
    }
  })
}
