/** What pencil and paper say of a kind of equipment that says nothing else. */
import type { ByHand } from './by-hand.js'
import { jamStops, type MayJam } from './jams-by-hand.js'

/** What is so of a kind that says nothing else: it stops for nothing but jams, holds nothing, and all cases go the first way. */
export const inGeneral = {
  stops: jamStops,
  /** One stop in so many cases. */
  counted: (_, { perCase, ...stop }, { perShift }) => ({ ...stop, count: perCase * perShift }),
  places: () => null,
  buffer: () => null,
  split: (_, [first]) => {
    const { target } = first!
    return () => [[target, 1]]
  },
  unsealed: () => 0,
  unseen: () => 1,
  figure: () => null,
} satisfies Partial<ByHand<MayJam>>
