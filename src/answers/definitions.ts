/** What each measure that a report shows means, one by one, beside its name in the result document. */

import type { Figure } from '../catalogue/figure.js'
import { states } from '../line/states.js'
import { type Cell, words } from '../report/cell.js'
import type { Table } from '../report/report.js'
import type { LineResult } from './line-result.js'

/** By the last step of a measure's path; a pattern stands for several. The first that fits. */
const meanings: readonly [RegExp, string][] = [
  [/^measures\.throughput$/, 'good cases out over working time, which is the shift less its breaks'],
  [/^measures\.output$/, 'cases that leave the line sealed and not rejected, a shift'],
  [
    /^measures\.output-p10$/,
    'what 9 of 10 shifts reach: a quantile over shifts, with an interval from order statistics',
  ],
  [
    /^measures\.target-held$/,
    'of all shifts those whose own throughput reaches the target; Wilson interval, exact limits where nearly all or nearly none do',
  ],
  [/time-in-system$/, 'from the arrival of a case until it leaves the line, mean over the cases of a shift'],
  [/time-in-system-p95$/, 'the time that 95 of 100 cases of a shift do not pass'],
  [
    /^measures\.reopened$/,
    'good cases times the chance that a closure opens after the line: expected, not drawn',
  ],
  [/^measures\.unsealed$/, 'cases that left with a strip missing, seen by nobody; they are not good ones'],
  [/^measures\.rejected$/, 'cases that left the line as rejected'],
  [/^measures\.tape-per-case$/, 'tape off the rolls that lies on a good case'],
  [/tape-lost-per-case$/, 'tape lost in threading, stubs and breaks, spread over the good cases'],
  [/^measures\.tape$/, 'tape drawn from all rolls, losses included'],
  [/tape-mass$/, 'the same by weight, without cores'],
  [/cost-per-1000$/, 'all that is priced in the scenario, over the good cases'],
  [/cost-per-1000-tape$/, 'tape with its losses'],
  [/cost-per-1000-labour$/, 'people paid for the shift'],
  [/cost-per-1000-downtime$/, 'hours in which a sealer stands for a stop of its own'],
  [/cost-per-1000-energy$/, 'mean power over the shift'],
  [/cost-per-1000-maintenance$/, 'a yearly share of what was bought'],
  [/cost-per-1000-capital$/, 'what was bought, paid back over its life with interest'],
  [/cost-per-1000-failures$/, 'closures that open later, at what one costs'],
  [/cost-per-1000-failure-repair$/, 'the work of closing those again'],
  [/cost-per-year$/, 'cost of a shift times the shifts of a year'],
  [/\.arrived$/, 'cases that came, those turned away included'],
  [/\.orders-done$/, 'orders whose last case has come'],
  [/^arrivals\..*\.blocked$/, 'share of working time in which the packers wait for room'],
  [/turned-away$/, 'share of the cases that found no room and went elsewhere'],
  [/^arrivals\..*held-largest$/, 'most cases on the floor at one time'],
  [/^arrivals\..*\.held$/, 'cases on the floor before the line, mean over time'],
  [/held-p95$/, 'what is not passed for 95 % of the time'],
  [/held-largest$/, 'most cases at one time; mean over shifts of the most'],
  [/\.held$/, 'cases in the place, mean over time, those in work included'],
  [
    /share-full$/,
    'share of time in which not even the shortest case more would find room; of a belt, in which it stands',
  ],
  [/measures\.wait$/, 'from arrival at its waiting room to the start of its work'],
  [
    /utilisation$/,
    'share of its places with a case in work, over all time: none while it stands for a stop or a break',
  ],
  [/planned-stops$/, 'stops after a number of cases, such as pallet changes'],
  [
    /-in-breaks$/,
    'of these stops those that waited for the end of a break, with nobody there who could come',
  ],
  [/-stop$/, 'from the stop until it runs again'],
  [/-wait$/, 'the part of that until somebody is there'],
  [/\.jams$/, 'cases that stop at the first head and must be cleared'],
  [/(roll-changes|\.changes)$/, 'rolls put in'],
  [/tape-breaks$/, 'strips that tear and are laid again'],
  [/size-settings$/, 'settings to another case'],
  [/breakdowns$/, 'failures of the machine that must be repaired'],
  [/blade-services$/, 'services of the cutting blades after their cuts'],
  [/\.to-[^.]*$/, 'cases that the divert sent there'],
  [/\.inspected$/, 'cases looked at, again when they come again'],
  [/unsealed-found$/, 'unsealed cases that the inspection found'],
  [/unsealed-missed$/, 'unsealed cases that the inspection did not find'],
  [/\.rejected$/, 'cases that the inspection rejected'],
  [/cases-lost$/, 'cases spoilt in jams'],
  [/heads\..*\.tape$/, 'tape drawn from the roll of the head'],
  [/heads\..*\.tape-per-case$/, 'tape of one strip'],
  [/heads\..*\.loss$/, 'tape lost in threading, stubs and breaks'],
  [/\.rolls$/, 'rolls used, parts of rolls counted as parts'],
  [/\.spoilt$/, 'tape of strips that tore'],
  [/\.missed$/, 'cases that passed an empty roll'],
  [/\.PBT$/, 'ISO 22400-2: the shift less breaks, planned stops and blade service'],
  [/\.APT$/, 'ISO 22400-2: time in which it works on cases'],
  [/\.AUST$/, 'ISO 22400-2: time in which it is set'],
  [/\.ADET$/, 'ISO 22400-2: time lost to stops that nobody planned'],
  [/\.availability$/, 'ISO 22400-2: APT over PBT'],
  [/\.effectiveness$/, 'ISO 22400-2: planned run time of its cases over APT'],
  [/\.quality$/, 'ISO 22400-2: good cases over all cases'],
  [/\.oee$/, 'product of the three; not cut off at 1'],
  [
    /technical-availability$/,
    'share of PBT without its own jams, tape and breakdowns: what others do to it does not lower it',
  ],
  [/\.busy$/, 'share of the time in which they are there in which they walk or work'],
  [/\.at-post$/, 'share of time in which somebody stands there'],
]

/** By key of the state. */
const stateMeanings: Record<string, string> = {
  working:
    'at work on a case; of a sealer the time of its headway and of folding, of a conveyor the time in which it moves cases',
  waiting: 'ready, and no case is there',
  blocked: 'ready, and what follows takes no case',
  'jam-waiting-for-crew': 'jammed, and nobody is there yet',
  'jam-being-cleared': 'jammed, and somebody clears it, isolation included',
  'tape-waiting-for-crew': 'out of tape or with a torn strip, and nobody is there yet',
  'tape-being-changed': 'a roll is put in, or a torn strip mended',
  'size-waiting-for-crew': 'another case is due, and nobody is there to set it',
  'size-being-set': 'it is set to another case',
  'breakdown-waiting-for-crew': 'broken down, and nobody is there yet',
  'breakdown-being-repaired': 'broken down, and somebody repairs it',
  'blade-service': 'stopped for its blades',
  'planned-stop': 'stands after a number of cases, as for a pallet change, and no case is in work',
  'on-break': 'stands because of a break',
}

/** Meaning of a measure by its path in the document; null where it has none. */
export const meaningOf = (path: string): string | null =>
  meanings.find(([pattern]) => pattern.test(path))?.[1] ?? null

/** A measure of one piece stands for that of all. */
const generalPath = (path: string) =>
  path
    .replace(/^(equipment|arrivals|crew)\.[^.]*/, '$1.NAME')
    .replace(/\.heads\.[^.]*/, '.heads.HEAD')
    .replace(/\.to-[^.]*$/, '.to-TARGET')

/** Every measure of the results once, with its words, its place in the document and its meaning, and the states that occur. */
export function definitionsTable(results: readonly LineResult[]): Table {
  const rows = new Map<string, Cell[]>()
  const tell = (path: string, { label }: Pick<Figure, 'label'>) => {
    const place = generalPath(path)
    if (!rows.has(place)) rows.set(place, [label, { path: place }, meaningOf(path) ?? ''])
  }
  const all = (path: string, figures: Record<string, Figure> = {}) => {
    for (const [key, figure] of Object.entries(figures)) tell(`${path}.${key}`, figure)
  }
  const seen = new Set<string>()
  for (const { measures, arrivals, equipment, crew } of results) {
    all('measures', measures)
    for (const [name, figures] of Object.entries(arrivals)) all(`arrivals.${plain(name)}`, figures)
    for (const [name, piece] of Object.entries(equipment)) {
      all(`equipment.${plain(name)}.measures`, piece.measures)
      for (const [head, figures] of Object.entries(piece.heads ?? {}))
        all(`equipment.${plain(name)}.heads.${plain(head)}`, figures)
      all(`equipment.${plain(name)}.effectiveness`, piece.effectiveness)
      for (const [key, { mean }] of Object.entries(piece.states)) if (mean) seen.add(key)
    }
    for (const [name, figures] of Object.entries(crew)) all(`crew.${plain(name)}`, figures)
  }
  const ofStates = states.flatMap(({ key, label }) =>
    seen.has(key)
      ? [[`State: ${label}`, { path: `equipment.NAME.states.${key}` }, stateMeanings[key] ?? '']]
      : [],
  )
  return {
    title: 'What each measure means',
    note: 'Means over shifts have Student t intervals, from 30 shifts on with their skewness taken into account; counts of fewer than 30 events exact limits, shares of shifts Wilson intervals (exact limits near none and all), totals over totals the ratio estimator. The words are those of the first piece that has the measure; the second column is its place in result.json.',
    columns: words('measure', 'place in result.json', 'meaning'),
    rows: [...rows.values(), ...ofStates],
  }
}

/** A name as one step of a path. */
const plain = (name: string) => name.replaceAll('.', ' ')
