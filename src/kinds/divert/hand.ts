/** A divert by hand. */
import type { ByHand } from '../by-hand.js'
import { placeByHand } from '../place-by-hand.js'
import type { DivertKeys } from './keys.js'

export const divertByHand: ByHand<DivertKeys> = {
  ...placeByHand,
  split({ rule }, ways, { scenario, capacity }) {
    if (rule === 'by-case') {
      const kinds = Object.keys(scenario.cases)
      return (kind) => [[ways.find(({ onlyCase }) => onlyCase === kinds[kind])!.target, 1]]
    }
    const targets = ways.map(({ target }) => target)
    const weights = rule === 'shortest' ? capacity(targets) : targets.map(() => 1)
    const sum = weights.reduce((total, weight) => total + weight, 0)
    return () => targets.map((target, index) => [target, weights[index]! / sum])
  },
}
