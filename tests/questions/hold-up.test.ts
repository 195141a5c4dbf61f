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
    expect(heldUpBy('sealer', line)).toEqual(['palletiser'])
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
    expect(heldUpBy('sealer', line)).toEqual(['outfeed'])
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

  // a half of 30 % is 15 %: both robots are held up less than that, the belt before the divert is not
  const parted = (waiting: number, stops: number): Parameters<typeof lineOf> => [
    {
      sealer: { type: 'sealer', states: { working: 0.5, blocked: 0.3 } },
      joining: { type: 'conveyor', states: { working: 0.5, blocked: 0.5 } },
      split: { type: 'divert', states: { blocked: 0.3 } },
      one: { type: 'station', states: { working: 0.8, 'planned-stop': stops, waiting: 0.05 } },
      other: { type: 'station', states: { working: 0.8 - waiting, 'planned-stop': stops / 2, waiting } },
    },
    { split: ['one', 'other'], one: ['exit'], other: ['exit'] },
  ]

  it('is both of two robots beyond a divert that have as little to wait for', () => {
    const line = lineOf(...parted(0.08, 0.1))
    expect(heldUpBy('sealer', line)).toEqual(['one', 'other'])
    expect(holdUpText('sealer', '30 %', line)).toBe(
      'Cases leave one and other too slowly, which blocks sealer for 30 % of the shift. Try faster ones: more conveyor only evens out what varies.',
    )
    expect(holdUpText('sealer', '30 %', lineOf(...parted(0.08, 0.16)))).toBe(
      'Stops of one and other, 16 % of the shift at most, block sealer for 30 %. Try more conveyor between them, or fewer and shorter stops.',
    )
  })

  it('is not a robot that waits for cases while the other one has them', () => {
    expect(heldUpBy('sealer', lineOf(...parted(0.4, 0.1)))).toEqual(['one'])
  })

  it('is not told where the exit takes all, or of a document that tells no ways', () => {
    const line = lineOf({ sealer })
    expect(heldUpBy('sealer', line)).toEqual([])
    expect(heldUpBy('sealer', { equipment: lineOf(...parted(0.1, 0.1)).equipment })).toEqual([])
    expect(holdUpText('sealer', '20 %', line)).toBeNull()
  })

  it('is looked for no longer than there are pieces, where a way leads back', () => {
    const pieces = { sealer, back: { type: 'conveyor', states: { blocked: 0.2 } } }
    expect(heldUpBy('sealer', lineOf(pieces, { back: ['sealer'] }))).toEqual([])
  })
})
