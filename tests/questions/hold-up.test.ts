/** What a run says to try where a piece cannot pass its cases on, by hand on lines whose shares are given. */
import { describe, expect, it } from 'vitest'
import type { RunResult } from '../../src/questions/run/document.js'
import { heldUpBy, holdUpText } from '../../src/questions/run/hold-up.js'

type Shares = Record<string, number>

/** A line of these pieces one behind the other, of which each is so much of the shift in the states; `ways`: where cases go else. */
function lineOf(
  pieces: Record<string, { type: string; states: Shares }>,
  ways: Record<string, string[]> = {},
): Pick<RunResult, 'equipment' | 'layout'> {
  const names = Object.keys(pieces)
  const equipment = Object.fromEntries(
    Object.entries(pieces).map(([name, { type, states }]) => [
      name,
      {
        type,
        measures: {},
        states: Object.fromEntries(Object.entries(states).map(([key, mean]) => [key, { mean }])),
      },
    ]),
  )
  const layout = {
    pieces: names.map((name, index) => ({ name, next: ways[name] ?? [names[index + 1] ?? 'exit'] })),
  }
  return { equipment, layout } as unknown as Pick<RunResult, 'equipment' | 'layout'>
}

const sealer = { type: 'sealer', states: { working: 0.5, blocked: 0.2 } }

describe('what holds a sealer up', () => {
  it('is the palletiser beyond a conveyor that stands for it: its pallet changes ask for conveyor before it', () => {
    const line = lineOf({
      sealer,
      outfeed: { type: 'conveyor', states: { working: 0.6, blocked: 0.3 } },
      palletiser: { type: 'station', states: { working: 0.5, 'planned-stop': 0.15 } },
    })
    expect(heldUpBy('sealer', line)).toBe('palletiser')
    expect(holdUpText('sealer', '20 %', line)).toBe(
      'Stops of palletiser, 15 % of the shift, block sealer for 20 %. Try more conveyor between them, or fewer and shorter stops.',
    )
  })

  it('is a conveyor that is itself hardly held up: a longer one would be as slow', () => {
    const line = lineOf({
      sealer,
      outfeed: { type: 'conveyor', states: { working: 0.95, blocked: 0.05 } },
      palletiser: { type: 'station', states: { working: 0.5 } },
    })
    expect(heldUpBy('sealer', line)).toBe('outfeed')
    expect(holdUpText('sealer', '20 %', line)).toContain(
      'Try a faster belt there: a longer one does not help.',
    )
  })

  it('is a palletiser that works all the time: a faster one, for conveyor would only fill', () => {
    const line = lineOf({
      sealer,
      outfeed: { type: 'conveyor', states: { working: 0.6, blocked: 0.4 } },
      palletiser: { type: 'station', states: { working: 0.97, 'planned-stop': 0.02 } },
    })
    expect(holdUpText('sealer', '20 %', line)).toBe(
      'Cases leave palletiser too slowly, which blocks sealer for 20 % of the shift. Try a faster palletiser: more conveyor only evens out what varies.',
    )
  })

  it('is not told where ways part before it, where the exit takes all, or of a document that tells no ways', () => {
    const pieces = {
      sealer,
      split: { type: 'divert', states: { blocked: 0.3 } },
      one: { type: 'station', states: { working: 0.9 } },
      other: { type: 'station', states: { working: 0.9 } },
    }
    expect(heldUpBy('sealer', lineOf(pieces, { split: ['one', 'other'] }))).toBeNull()
    expect(heldUpBy('sealer', lineOf({ sealer }))).toBeNull()
    expect(heldUpBy('sealer', { equipment: lineOf(pieces).equipment })).toBeNull()
  })

  it('is looked for no longer than there are pieces, where a way leads back', () => {
    const pieces = { sealer, back: { type: 'conveyor', states: { blocked: 0.2 } } }
    expect(heldUpBy('sealer', lineOf(pieces, { back: ['sealer'] }))).toBeNull()
  })
})
