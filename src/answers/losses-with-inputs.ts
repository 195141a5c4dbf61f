/** What draws of the inputs add to the losses: each draw is taken apart as the study is, at what its own machines could put out. */
import type { Figure } from '../catalogue/figure.js'
import { ofInputs } from '../statistics/both-kinds.js'
import { bare } from '../statistics/estimate.js'
import { layoutOf } from '../statistics/layout.js'
import type { Simulated } from './figures.js'
import { inputsOf } from './line-result.js'
import { type Losses, type LossesAsked, type LossStep, lossesRead, type MachineLosses } from './losses.js'
import type { Series } from './losses-study.js'
import type { Draws } from './with-inputs.js'

/** A figure with what its draws add, by the name of its place. */
type Added = (figure: Figure, place: string) => Figure

/** The losses of a study with what its draws add; as they are where inputs are held fixed. */
export function lossesWithInputs(
  simulated: Simulated,
  asked: LossesAsked,
  draws: Draws | null,
): Losses | null {
  const { losses } = lossesRead(simulated, asked)
  if (losses === null || draws === null) return losses
  const drawn = draws.of.map(({ scenario, shifts }) => {
    const { series } = lossesRead({ ...simulated, scenario, shifts }, { ...asked, isPlain: true })
    // what happened in no shift of a draw took nothing
    return (place: string): Series => series.get(place) ?? shifts.map(() => 0)
  })
  return withAdded(losses, (figure, place) => {
    const { mean, low, high, n } = figure
    if (mean === null || low === null || high === null) return figure
    const layout = layoutOf(drawn.map((series) => series(place)))
    // of a step that adds cases in no draw it is not believed
    const least = Math.min(0, low, ...layout.means)
    const both = ofInputs({ ...bare(mean, n), low, high }, layout, asked.confidence, {
      ends: [least, Number.POSITIVE_INFINITY],
    })
    return { ...figure, inputs: inputsOf(both) }
  })
}

function withAdded({ machines, line, output }: Losses, added: Added): Losses {
  const steps = (where: string, all: readonly LossStep[]) =>
    all.map((step) => ({ ...step, cases: added(step.cases, `${where} ${step.key}`) }))
  return {
    machines: machines.map((each) => ({
      ...each,
      ...limitOf(each, added),
      losses: steps(each.machine, each.losses),
      leaves: added(each.leaves, `${each.machine} passed on`),
    })),
    line: steps('line', line),
    output: added(output, 'line output'),
  }
}

/** What a machine could put out with its interval; nothing where no input moves that. */
function limitOf({ machine, could, leaves }: MachineLosses, added: Added): Pick<MachineLosses, 'limit'> {
  const { n, unit } = leaves
  const given = {
    mean: could,
    low: could,
    high: could,
    sd: 0,
    n,
    unit,
    label: `Capacity of ${machine}`,
  }
  const limit = added(given, `${machine} capacity`)
  return limit.inputs && limit.inputs.share > 0 ? { limit } : {}
}
