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
  kept.add(3)
  kept.add(4)
  expect(drawn(kept, draws, 3)).toEqual([3, 4, 5])
})

it('is forgotten with the shift', () => {
  const [kept, draws] = [new Kept(), new Counting()]
  kept.add(7)
  kept.forget()
  expect(drawn(kept, draws, 1)).toEqual([1])
})
