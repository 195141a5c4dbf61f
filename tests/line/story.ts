/** Runs one shift of a whole scenario and tells who took which case when, and the measures of the shift. */
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

export interface Story {
  /** Every case that a piece takes or that leaves: time in s to a microsecond, running number of the case, where. */
  moves: [time: number, item: number, where: string][]
  /** The source of each case. */
  sources: Map<number, string>
  /** The value of a measure by its path; the numerator of a ratio. */
  read: (path: string) => number
}

export function tell(text: string, shift = 1, seed = 'test'): Story {
  const line = new Line(loadScenario(text).scenario)
  const moves: Story['moves'] = []
  const sources: Story['sources'] = new Map()
  line.observe(({ time, event, at, case: item }) => {
    if (event === 'taken' || event === 'leaves')
      moves.push([Math.round(time * 1e6) / 1e6, item!, event === 'leaves' ? 'out' : at])
    if (event === 'arrives') sources.set(item!, at)
  })
  const result = line.simulate(seed, shift)
  const read = (path: string) => {
    const index = line.columns.findIndex(
      ({ measure, part }) => part === 'value' && measure.path.join('.') === path,
    )
    if (index < 0) throw new Error(`no measure ${path}`)
    return result.values[index]!
  }
  return { moves, sources, read }
}

/** Moves to one place: time and case. */
export const into = (story: Story, where: string): [time: number, item: number][] =>
  story.moves.filter(([, , at]) => at === where).map(([time, item]) => [time, item])
