/** What limits the design that a sizing ends with: by hand, and by what is seen to take its output. */
import type { EquipmentResult } from '../../answers/line-result.js'
import type { MachineLosses } from '../../answers/losses.js'
import { share } from '../../answers/losses-table.js'
import { entriesOf } from '../../catalogue/figure.js'
import { stateLabel } from '../../catalogue/states.js'
import { percentText, sentences } from '../../report/format.js'
import type { JudgedAfresh } from './document.js'

/** The piece with least to spare by hand and what it does, and what takes most from the machine that loses least. */
export function limiting({ bottleneck, equipment, losses }: JudgedAfresh): string {
  const piece = bottleneck === null ? undefined : equipment[bottleneck]
  return sentences(
    piece &&
      `It is limited by ${bottleneck}, which by hand calculation has least spare capacity: ${topStates(piece)}.`,
    losses && largestLosses(losses.machines),
  ).join(' ')
}

/** The three states that take most of its time. */
const topStates = ({ states }: EquipmentResult): string =>
  entriesOf(states)
    .filter(([, { mean }]) => (mean ?? 0) > 0)
    .sort(([, a], [, b]) => b.mean! - a.mean!)
    .slice(0, 3)
    .map(([key, { mean }]) => `${stateLabel(key)} ${percentText(Number(mean!.toPrecision(2)))}`)
    .join(', ')

/** Losses that are told; less than this of what it could put out shows in no decision. */
const [mostTold, leastTold] = [3, 0.001]

function largestLosses(machines: readonly MachineLosses[]): string | false {
  const kept = ({ leaves, could }: MachineLosses) => (leaves.mean ?? 0) / could
  const [machine] = machines.toSorted((a, b) => kept(b) - kept(a))
  const steps = (machine?.losses ?? [])
    .filter((step) => step.share >= leastTold)
    .sort((a, b) => b.share - a.share)
    .slice(0, mostTold)
  return (
    steps.length > 0 &&
    `The largest losses of ${machine!.machine} are: ${steps.map((step) => `${step.label} ${share(step.share)}`).join(', ')}.`
  )
}
