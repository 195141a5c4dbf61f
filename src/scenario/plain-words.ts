/** What people write in their own words, and the format otherwise: sizes of a case in one value, rates and stops a shift, shares in per cent. */

import { isBetween } from './between.js'
import { readSize } from './case-size.js'
import type { Finding } from './finding.js'
import { isMap, mapsIn } from './is-map.js'
import { isGuess } from './known.js'
import { casesPerShift, shiftTimes, stopsPerShift, written } from './per-shift.js'
import { shown } from './printable.js'
import { isPercent } from './values.js'
import type { Path } from './walk.js'

/** A value that is read as another one. */
export interface ReadAs {
  /** Where the value stands now, and where it was written. */
  path: Path
  from: Path
  written: string
  /** What it is taken for, in words; null where the same is told of another value. */
  meaning: string | null
}

type Map = Record<string, unknown>

const sides = ['length', 'width', 'height'] as const

/**
 * Puts the three sides in place of `size` in the cases of a tree. `isOver`: the size comes from an override, and stands for sides that are there.
 */
export function spellSizes(tree: Map, isOver: boolean): { readAs: ReadAs[]; findings: Finding[] } {
  const readAs: ReadAs[] = []
  const findings: Finding[] = []
  for (const [name, kind] of mapsIn(tree.cases)) {
    if (kind.size === undefined) continue
    const path = ['cases', name, 'size']
    const found = shown(kind.size)
    const tell = (code: Finding['code'], rule: string, fix: string) =>
      findings.push({ code, path, found, rule, fix, atKey: false })
    const size = readSize(kind.size)
    const twice = sides.find((side) => kind[side] !== undefined)
    if ('fault' in size) tell(size.fault.code, size.fault.rule, size.fault.fix)
    else if (twice && !isOver)
      tell(
        'conflict',
        `\`size\` says what \`${twice}\` says too`,
        `leave out \`size\`, or length, width and height`,
      )
    else
      for (const [place, side] of sides.entries()) {
        kind[side] = size.value[place]
        readAs.push({ path: ['cases', name, side], from: path, written: found, meaning: null })
      }
    delete kind.size
  }
  return { readAs, findings }
}

/** Machine tape is sold by the inch and cut in mm: what most of it measures, and from where to where it is sold. Common practice, no source. */
const byTheInch: Readonly<Record<string, { width: string; measured: string; sold: string }>> = {
  2: { width: '48 mm', measured: '1.89 in', sold: '48 to 51 mm' },
  3: { width: '72 mm', measured: '2.83 in', sold: '72 to 76 mm' },
}

/** Puts the width of 2-inch and 3-inch tape in place of its name, in the tape and in the closure that it is held against. */
export function spellTape(tree: Map): ReadAs[] {
  const closure = isMap(tree.closure) ? tree.closure : {}
  const holders: [Path, unknown][] = [
    [['tape', 'width'], tree.tape],
    [['closure', 'reference', 'width'], closure.reference],
  ]
  return holders.flatMap(([path, holder]) => {
    const said = isMap(holder) ? holder.width : undefined
    const [, inches] =
      typeof said === 'string' ? (/^\s*([23])(?:\.0*)?\s*(?:in|inch|inches|")\s*$/.exec(said) ?? []) : []
    if (inches === undefined || !isMap(holder)) return []
    const { width, measured, sold } = byTheInch[inches]!
    holder.width = width
    return [
      {
        path,
        from: path,
        written: shown(said),
        meaning: `${inches}-inch tape, ${width} (${measured}) wide; it is sold ${sold} wide`,
      },
    ]
  })
}

/**
 * Puts rates in place of numbers a shift, in a tree with its defaults. `isAssumed`: nobody gave the value at a path. Returns what is read as what, and
 * the paths of values that nobody gave and that were said with another one.
 */
export function spellPerShift(
  tree: Map,
  isAssumed: (path: string) => boolean,
): { readAs: ReadAs[]; given: string[] } {
  const times = shiftTimes(tree.shift)
  const readAs: ReadAs[] = []
  const given: string[] = []
  if (times === null) return { readAs, given }
  const { length, working, startUp } = times
  const rateAt = (holder: Map, key: string, path: Path, time: number, over: string) => {
    const said = holder[key]
    if (said === undefined) return
    const rate = (each: unknown) => {
      const cases = casesPerShift(each)
      return cases === null ? each : `${written((cases / time) * 3600)} cases/h`
    }
    holder[key] = isGuess(said) ? guessWith(said, rate) : rate(said)
    if (holder[key] === said || JSON.stringify(holder[key]) === JSON.stringify(said)) return
    const meaning = `${Number((casesOf(said) / (time / 60)).toPrecision(4))} cases/min over the ${hours(time)} ${over}`
    readAs.push({ path, from: path, written: textOf(said), meaning })
  }
  rateAt(tree, 'target', ['target'], working, 'of working time')
  for (const [name, source] of mapsIn(tree.arrivals))
    rateAt(source, 'rate', ['arrivals', name, 'rate'], working - startUp, 'in which cases come')
  for (const [name, { breakdowns }] of mapsIn(tree.line)) {
    const stops = isMap(breakdowns) ? stopsPerShift(breakdowns.after) : null
    if (stops === null || !isMap(breakdowns)) continue
    const path = ['line', name, 'breakdowns', 'after']
    const clock = `line.${name}.breakdowns.counted-in`
    // a number a shift counts all of the shift, whatever the piece does meanwhile
    const isCalendar = isAssumed(clock)
    if (isCalendar) {
      breakdowns['counted-in'] = 'calendar-time'
      given.push(clock)
    }
    const isOfAll = breakdowns['counted-in'] === 'calendar-time'
    const mean = (isOfAll ? length : working) / stops
    readAs.push({
      ...{ path, from: path, written: textOf(breakdowns.after) },
      meaning: `${Number((mean / 60).toPrecision(4))} min from a repair to the next breakdown on average, any time as likely as another (exponential), ${isOfAll ? 'by the calendar' : 'of running time: a piece that waits has fewer'}`,
    })
    breakdowns.after = { exponential: { mean: `${written(mean)} s` } }
  }
  return { readAs, given }
}

const guessWith = (guess: Map, read: (each: unknown) => unknown): Map => ({
  ...guess,
  guess: read(guess.guess),
  between: Array.isArray(guess.between) ? guess.between.map(read) : guess.between,
})

const casesOf = (said: unknown): number => casesPerShift(isGuess(said) ? said.guess : said) ?? Number.NaN

const textOf = (said: unknown): string => shown(isGuess(said) ? said.guess : said)

const hours = (seconds: number): string => `${Number((seconds / 3600).toPrecision(4))} h`

/** Times that lie somewhere between two, wherever they stand below `path`. */
export function betweensIn(value: unknown, path: Path = []): ReadAs[] {
  if (isBetween(value))
    return [
      {
        path,
        from: path,
        written: shown(value),
        meaning: 'any time between the two, one as likely as another (uniform)',
      },
    ]
  if (typeof value !== 'object' || value === null) return []
  const entries = Array.isArray(value) ? [...value.entries()] : Object.entries(value)
  return entries.flatMap(([key, each]: [string | number, unknown]) => betweensIn(each, [...path, key]))
}

/** Shares in per cent that do not add up are most often a case that was forgotten; thirds and the like round to a point. */
const mostOff = 1

/** Where shares of the arrivals are in per cent all of them are, and together all that arrives. */
export function percentFindings(tree: Map): Finding[] {
  const shares = mapsIn(tree.cases).map(([name, { share }]) => ({
    name,
    share: isGuess(share) ? share.guess : share,
  }))
  if (!shares.some(({ share }) => isPercent(share))) return []
  const tell = (name: string, found: unknown, rule: string, fix: string): Finding[] => [
    { code: 'conflict', path: ['cases', name, 'share'], found: shown(found), rule, fix, atKey: false },
  ]
  const odd = shares.find(({ share }) => !isPercent(share))
  if (odd)
    return tell(
      odd.name,
      odd.share,
      'a share in % is a share of all arrivals: then the share of every case must be in %',
      'write all shares in %, or none',
    )
  const sum = shares.reduce((total, { share }) => total + Number.parseFloat(String(share)), 0)
  if (Math.abs(sum - 100) <= mostOff) return []
  const last = shares.at(-1)!
  return tell(
    last.name,
    last.share,
    `shares in % must add up to 100 %, not ${Number(sum.toPrecision(6))} %`,
    'give shares that add up to 100 %, or shares without %',
  )
}
