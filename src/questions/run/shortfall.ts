/** What a rate lacks of its target, with the plus-minus of the rate. */
import type { Figure } from '../../catalogue/figure.js'

/** Cases a second; below 0 where the rate is above the target. */
export const shortfall = (throughput: Figure, target: number): Figure => ({
  ...throughput,
  mean: target - throughput.mean!,
  ...turned(throughput, target),
  ...(throughput.inputs ? { inputs: { ...throughput.inputs, ...turned(throughput.inputs, target) } } : {}),
})

/** Ends of what is left up to the target. */
const turned = ({ low, high }: Pick<Figure, 'low' | 'high'>, target: number) => ({
  low: target - high!,
  high: target - low!,
})
