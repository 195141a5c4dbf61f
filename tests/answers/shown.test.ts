/** One rule for "shown": whatever differs and however little, a printed interval contains 0 where nothing is shown, and leaves it out where something is. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { differenceParts, printDifference, sizeText } from '../../src/answers/difference.js'
import { type DifferenceFigure, judgedFigures } from '../../src/answers/difference-figure.js'
import { differenceCell, differenceSize } from '../../src/questions/sweep/words.js'
import { gapsOf } from '../../src/questions/validate/gaps.js'
import { pairedDifference } from '../../src/statistics/paired.js'

/** Both ends of what is printed, `+0.3 ± 0.1`, `0.3 (0.1 to 0.6)`; one number twice where it stands alone; null where there is none. */
function endsOf(text: string): [number, number] | null {
  const numbers = (part: string) =>
    [...part.replace(/\u2009/g, '').matchAll(/[+-]?\d+(?:\.\d+)?/g)].map(([each]) => Number(each))
  const range = /\(?([+-]?[\d.\u2009]+) to ([+-]?[\d.\u2009]+)/.exec(text)
  if (range) return [numbers(range[1]!)[0]!, numbers(range[2]!)[0]!]
  const [value, half = 0] = numbers(text)
  return value === undefined ? null : [value - half, value + half]
}

/** Nothing is printed to more than eight decimals. */
const thousandths = (least: number, most: number) =>
  fc.integer({ min: 1000 * least, max: 1000 * most }).map((each) => each / 1000)

/** Shifts of a base and of two designs that differ from it by anything from a hair to all. */
const designs = fc.record({
  shifts: fc.array(fc.tuple(thousandths(0, 1), thousandths(-1, 1)), {
    minLength: 3,
    maxLength: 40,
  }),
  size: fc.integer({ min: -3, max: 6 }).map((power) => 10 ** power),
  effect: thousandths(-3, 3),
  unit: fc.constantFrom('cases/s', 's', 'EUR/1000 cases', 'share', 'cases'),
})

const judged = ({ shifts, size, effect, unit }: typeof designs extends fc.Arbitrary<infer T> ? T : never) => {
  const base = shifts.map(([luck]) => luck * size)
  const other = shifts.map(([luck, own]) => (luck + own + effect / Math.sqrt(shifts.length)) * size)
  const at = (confidence: number) => pairedDifference(base, other, confidence)
  const measure = { unit, label: 'any' }
  return judgedFigures(
    [
      { measure, at },
      { measure, at },
    ],
    0.95,
  )[0]!
}

describe('a difference', () => {
  const count = { shown: 0, not: 0 }
  const asJudged = (figure: DifferenceFigure, texts: readonly string[]) => {
    for (const text of texts) {
      const ends = endsOf(text)
      if (ends === null) continue
      const isOff = ends[0] > 0 || ends[1] < 0
      expect([text, isOff]).toEqual([text, figure.isShown])
    }
  }

  it('is shown where the printed interval leaves 0 out, and only there', () => {
    fc.assert(
      fc.property(designs, (given) => {
        const figure = judged(given)
        if (figure.low === null || figure.low === figure.high) return
        count[figure.isShown ? 'shown' : 'not']++
        const result = { display: 'metric' } as const
        const { value, interval } = printDifference(figure, 'metric')
        asJudged(figure, [
          differenceParts(figure, 'metric').join(' '),
          `${value} ${interval}`,
          differenceSize(figure, result),
          differenceCell(figure, result).join(' '),
          sizeText(figure, 'metric'),
        ])
      }),
      { numRuns: 3000, seed: 20261129 },
    )
    expect(Math.min(count.shown, count.not)).toBeGreaterThan(300)
  })
})

describe('stops of plant and model', () => {
  const day = fc.record({ stops: fc.integer({ min: 0, max: 9 }), seconds: fc.integer({ min: 0, max: 900 }) })
  const days = fc.array(fc.record({ plant: fc.tuple(day, day), model: fc.tuple(day, day) }), {
    minLength: 2,
    maxLength: 20,
  })
  const causes = ['jams', 'breakdowns'].map((words) => ({ path: `line.sealer.${words}`, words }))

  it('are shown to differ where the interval leaves 0 out, and only there, at any confidence', () => {
    let shown = 0
    fc.assert(
      fc.property(
        days,
        fc.constantFrom(0.8, 0.95, 0.99),
        fc.integer({ min: 0, max: 9 }),
        (all, confidence, more) => {
          const moved = all.map(({ plant, model }) => ({
            plant,
            model: model.map(({ stops, seconds }) => ({ stops: stops + more, seconds })),
          }))
          for (const { stops, seconds } of gapsOf(causes, moved, confidence))
            for (const { low, high, isShown } of [stops, seconds]) {
              if (low === null || high === null) continue
              expect(low > 0 || high < 0).toBe(isShown)
              if (isShown) shown++
            }
        },
      ),
      { numRuns: 500, seed: 20261129 },
    )
    expect(shown).toBeGreaterThan(100)
  })
})
