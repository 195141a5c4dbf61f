/** The plan: geometry to scale, words for what colour says, long lines in rows, and hostile names. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Kind } from '../../src/kinds/keys.js'
import { type Layout, type LayoutPiece, layoutOf } from '../../src/pictures/layout.js'
import { planSvg, planWords } from '../../src/pictures/plan.js'
import { heightOf, placeLabels } from '../../src/pictures/plan-labels.js'
import { rowsOf } from '../../src/pictures/plan-rows.js'
import { loadScenario } from '../../src/scenario/load.js'
import { demos, loadDemo } from '../demo.js'
import { lines } from '../line/topology.js'

const layout = (line: string): Layout =>
  layoutOf(
    loadScenario(`cases: {a: {length: 600 mm, width: 400 mm, height: 250 mm}}
arrivals: {packing: {time-between: 10 s}}
line: {${line}}
shift: {length: 1 h}
crew: {tender: {people: 2, does: [jams, roll-change]}}`).scenario,
  )

const straight = layout(`infeed: {type: conveyor, length: 7 m, speed: 18 m/min},
  sealer: {type: sealer, bed: 1.8 m, belt-speed: 24 m/min},
  outfeed: {type: conveyor, carries: belt, length: 5 m, speed: 24 m/min},
  pallet: {type: station, time: 2 s, run-by: people}`)

interface Rect {
  x: number
  y: number
  width: number
  height: number
  stroke: number
}

const attribute = (tag: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1]

/** Outlines of all pieces as they are drawn, by name; one for each row. */
function outlines(svg: string): Map<string, Rect[]> {
  const found = new Map<string, Rect[]>()
  for (const [tag, name] of svg.matchAll(/<rect data-piece="([^"]*)"[^>]*>/g)) {
    const number = (key: string) => Number(attribute(tag, key))
    const rect = {
      x: number('x'),
      y: number('y'),
      width: number('width'),
      height: number('height'),
      stroke: number('stroke-width'),
    }
    found.set(name!, [...(found.get(name!) ?? []), rect])
  }
  return found
}

/** Every tag is closed in its order, and every attribute has one value: what a parser of XML asks first. */
function expectWellFormed(svg: string): void {
  const open: string[] = []
  const rest = svg.replace(
    /<(\/?)([a-z]+)((?: [a-zA-Z:-]+="[^"<]*")*)(\/?)>/g,
    (_all, end, name, _more, alone) => {
      if (end) expect(open.pop()).toBe(name)
      else if (!alone) open.push(name)
      return ''
    },
  )
  expect(open).toEqual([])
  expect(rest).not.toMatch(/[<>]/)
  expect(rest.replace(/&(?:amp|lt|gt|quot|#39);/g, '')).not.toContain('&')
}

describe('a straight line', () => {
  const svg = planSvg(straight, {
    limiting: 'sealer',
    states: { infeed: 'full 30 % of the shift' },
  }).toString()
  const drawn = outlines(svg)
  const scale = drawn.get('infeed')![0]!.width / 7

  it('is drawn to one scale, along and across', () => {
    for (const { name, x, length, width } of straight.pieces) {
      const [rect] = drawn.get(name)!
      expect(rect!.width).toBeCloseTo(length * scale, 1)
      expect(rect!.x - drawn.get('infeed')![0]!.x).toBeCloseTo(x * scale, 1)
      expect(rect!.height).toBeCloseTo(width * scale, 1)
    }
  })

  it('has a scale bar that is as long as it says', () => {
    const [bar, metres] = /<path data-scale="([^"]*)" d="[^"]*?h([\d.]+)/.exec(svg)!.slice(1).map(Number)
    expect(metres! / bar!).toBeCloseTo(scale, 1)
    expect(svg).toContain(`>${bar} m</text>`)
    const us = planSvg(straight, { display: 'us' }).toString()
    const [feet, units] = /<path data-scale="([^"]*)" d="[^"]*?h([\d.]+)/.exec(us)!.slice(1).map(Number)
    // 0.3048 m: the international foot
    expect(units! / feet!).toBeCloseTo(scale * 0.3048, 1)
    expect(us).toContain(`>${feet} ft</text>`)
    expect(us).toContain('ft/min')
  })

  it('marks the heads where they stand', () => {
    const heads = [...svg.matchAll(/<rect data-head="([^"]*)" x="([^"]*)"[^>]* width="([^"]*)"/g)].map(
      ([, name, x, width]) => [name, Number(x) + Number(width) / 2] as const,
    )
    const sealer = straight.pieces[1]!
    expect(heads).toHaveLength(2)
    for (const { name, at } of sealer.heads)
      expect(heads.find(([head]) => head === name)![1]).toBeCloseTo(
        drawn.get('sealer')![0]!.x + at * scale,
        1,
      )
    expect(svg).toContain('Heads: B bottom, T top.')
  })

  it('marks the piece with least to spare by words and a thick outline', () => {
    expect(svg).toContain('least to spare')
    expect(drawn.get('sealer')![0]!.stroke).toBeGreaterThan(2 * drawn.get('infeed')![0]!.stroke)
    expect(planSvg(straight).toString()).not.toContain('least to spare')
  })

  it('says names, speeds, sources, states and people', () => {
    for (const text of [
      '>infeed<',
      '>accumulating conveyor<',
      '>7 m, 18 m/min<',
      '>belts 24 m/min<',
      '>fed from packing<',
      '>full 30 % of the shift<',
      'Crew: tender 2.',
      'people who work there',
    ])
      expect(svg).toContain(text)
  })

  it('tells it all in words to those who do not see it', () => {
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="plan-title plan-desc"/)
    expect(svg).toContain('<title id="plan-title">The line from above, to scale: 15.2 m long</title>')
    expect(planWords(straight, { limiting: 'sealer' })).toBe(
      'infeed: accumulating conveyor, 7 m, 18 m/min, cases from packing, to sealer; ' +
        'sealer: sealer, belts 24 m/min, bottom head at 1.5 m, top head at 1.8 m, least to spare, to outfeed; ' +
        'outfeed: belt conveyor, 5 m, 24 m/min, to pallet; ' +
        'pallet: station, run by 1, to the exit.',
    )
  })

  it('takes its colours from the page, and has no style, script or address that a policy would forbid', () => {
    for (const name of ['ink', 'paper', 'quiet', 'accent']) expect(svg).toContain(`var(--${name}, #`)
    expect(svg).not.toMatch(/<style|<script|href|url\(/)
    expect(svg.replaceAll('http://www.w3.org/2000/svg', '')).not.toContain('http')
  })
})

describe('rows', () => {
  const piece = (name: string, type: Kind, x: number, length: number): LayoutPiece => ({
    name,
    type,
    x,
    y: 0,
    length,
    width: 0.5,
    speed: null,
    heads: [],
    next: [],
  })

  it('one holds 24 m', () => {
    expect(rowsOf({ pieces: [piece('a', 'conveyor', 0, 24)], length: 24 })).toEqual([{ from: 0, to: 24 }])
  })

  it('a longer line is cut between pieces where there is such a place', () => {
    const pieces = [
      piece('a', 'conveyor', 0, 15),
      piece('b', 'sealer', 15, 3),
      piece('c', 'conveyor', 18, 12),
    ]
    expect(rowsOf({ pieces, length: 30 })).toEqual([
      { from: 0, to: 18 },
      { from: 18, to: 30 },
    ])
  })

  it('one long conveyor is cut into equal parts, a machine is not cut', () => {
    expect(rowsOf({ pieces: [piece('a', 'conveyor', 0, 60)], length: 60 })).toEqual([
      { from: 0, to: 20 },
      { from: 20, to: 40 },
      { from: 40, to: 60 },
    ])
    const pieces = [
      piece('a', 'conveyor', 0, 16),
      piece('b', 'sealer', 16, 2),
      piece('c', 'conveyor', 18, 16),
    ]
    expect(rowsOf({ pieces, length: 34 })[0]).toEqual({ from: 0, to: 18 })
  })

  it('a very long line has eight', () => {
    expect(rowsOf({ pieces: [piece('a', 'conveyor', 0, 2000)], length: 2000 })).toHaveLength(8)
  })

  it('cover the line without gap, none longer than it may be', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.boolean(), fc.double({ min: 0.3, max: 70, noNaN: true })), {
          minLength: 1,
          maxLength: 12,
        }),
        (given) => {
          let x = 0
          const pieces = given.map(([isRigid, length], index) => {
            const here = piece(`p${index}`, isRigid ? 'station' : 'conveyor', x, length)
            x += length
            return here
          })
          const rows = rowsOf({ pieces, length: x })
          expect(rows[0]!.from).toBe(0)
          expect(rows.at(-1)!.to).toBeCloseTo(x, 9)
          for (const [index, { from, to }] of rows.entries()) {
            expect(to).toBeGreaterThan(from)
            expect(to - from).toBeLessThanOrEqual(Math.max(24, x / 8) + 1e-6)
            if (index > 0) expect(from).toBe(rows[index - 1]!.to)
          }
        },
      ),
      { seed: 1 },
    )
  })

  it('a piece that goes on is drawn and named in both', () => {
    const long = layout('infeed: {type: conveyor, length: 40 m}, sealer: {type: sealer}')
    const svg = planSvg(long).toString()
    expect(outlines(svg).get('infeed')).toHaveLength(2)
    expect(svg).toContain('infeed, continued')
    expect(svg).toContain('continues in the next row')
  })
})

describe('labels', () => {
  it('none covers another, and all are inside', () => {
    const label = fc.record({
      at: fc.double({ min: 22, max: 390, noNaN: true }),
      lines: fc.array(fc.string({ minLength: 1, maxLength: 25 }), { minLength: 1, maxLength: 4 }),
    })
    fc.assert(
      fc.property(fc.array(label, { maxLength: 12 }), (labels) => {
        const placed = placeLabels(labels, 420)
        expect(placed).toHaveLength(labels.length)
        for (const [index, a] of placed.entries()) {
          expect(a.from).toBeGreaterThanOrEqual(0)
          if (a.width < 420) expect(a.from + a.width).toBeLessThanOrEqual(420 + 1e-9)
          for (const b of placed.slice(index + 1))
            expect(a.level !== b.level || a.from + a.width <= b.from || b.from + b.width <= a.from).toBe(true)
        }
        expect(heightOf(placed)).toBeGreaterThanOrEqual(0)
      }),
      { seed: 1 },
    )
  })
})

describe('any line', () => {
  it('hostile names stay text', () => {
    const hostile = '"><script>alert(1)</script>\u0000&\u202e'
    const renamed: Layout = {
      ...straight,
      pieces: straight.pieces.map((piece) => ({ ...piece, name: piece.name + hostile, next: ['exit'] })),
      arrivals: [{ name: hostile, next: `infeed${hostile}` }],
      crews: [{ name: hostile, people: 1, at: `sealer${hostile}` }],
    }
    const svg = planSvg(renamed, {
      limiting: `infeed${hostile}`,
      states: { [`infeed${hostile}`]: hostile },
    }).toString()
    expectWellFormed(svg)
    expect(svg).not.toContain('<script')
    expect(svg).not.toContain('\u0000')
  })

  it.each(demos)('the plan of %s is well formed and shows every piece once in a row', async (name) => {
    const demo = layoutOf(await loadDemo(name))
    const svg = planSvg(demo, { limiting: demo.pieces[0]!.name }).toString()
    expectWellFormed(svg)
    expect([...outlines(svg).keys()].sort()).toEqual(demo.pieces.map((piece) => piece.name).sort())
    expect(svg).not.toMatch(/NaN|undefined|Infinity/)
    expect(svg.length).toBeLessThan(40_000)
  })

  it('of any shape is well formed', () => {
    fc.assert(
      fc.property(lines, (yaml) => {
        const svg = planSvg(layoutOf(loadScenario(yaml).scenario)).toString()
        expectWellFormed(svg)
        expect(svg).not.toMatch(/NaN|undefined|Infinity/)
      }),
      { seed: 1, numRuns: 50 },
    )
  })
})
