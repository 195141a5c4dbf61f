/** What was drawn ahead and kept is drawn next, in its order. */
import { expect, it } from 'vitest'
import { Draw } from '../../src/engine/draw.js'
import { Kept } from '../../src/engine/kept.js'

class Counting extends Draw {
  override value = 0

  override next(): void {
    this.value++
  }
}

function drawn(kept: Kept, draws: Draw, times: number): number[] {
  return Array.from({ length: times }, () => {
    kept.nextOf(draws)
    return kept.value
  })
}

it('comes before what is drawn anew', () => {
  const [kept, draws] = [new Kept(), new Counting()]
  expect(drawn(kept, draws, 4)).toEqual([1, 2, 3, 4])
  kept.putBack(4)
  kept.putBack(3)
  expect(drawn(kept, draws, 3)).toEqual([3, 4, 5])
})

it('comes back before what is still kept', () => {
  const [kept, draws] = [new Kept(), new Counting()]
  expect(drawn(kept, draws, 3)).toEqual([1, 2, 3])
  for (const value of [3, 2, 1]) kept.putBack(value)
  // two are drawn ahead once more, and the second is not needed
  expect(drawn(kept, draws, 2)).toEqual([1, 2])
  kept.putBack(2)
  expect(drawn(kept, draws, 3)).toEqual([2, 3, 4])
})

it('is forgotten with the shift', () => {
  const [kept, draws] = [new Kept(), new Counting()]
  kept.putBack(7)
  kept.forget()
  expect(drawn(kept, draws, 1)).toEqual([1])
})
