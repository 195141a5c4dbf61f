/** What a grid of two factors says: how much of one each value of the other asks for. */

import { besideCost, costWords, isCostInPart } from '../../answers/warnings.js'
import { nothing } from '../../catalogue/printed-units.js'
import { type Cell, figures, words } from '../../report/cell.js'
import { grouped, listed, type Parts, rateText } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { crossings } from './curve.js'
import {
  costName,
  type Factor,
  heldName,
  type SweepMeasure,
  type SweepPoint,
  type SweepResult,
} from './document.js'
import { gridPoint, gridValues } from './kinds.js'
import { butThere, meanText, measureSubject, measureWords, pointCell, pointText, valueText } from './words.js'

/** The measure that a grid is about: the first one asked for, the target where nobody asked. */
const gridMeasure = ({ measures }: Pick<SweepResult, 'measures'>): SweepMeasure => measures[0]!

const placeOf = (at: readonly number[], factors: readonly Factor[]) =>
  listed(factors.map((factor, index) => `${factor.path} = ${valueText(at[index]!, factor)}`))

/** The sentences at the head of the report. */
export const gridHeadline = (result: SweepResult): string[] => [
  ...levelLines(result),
  highestLine(result),
  ...cheapestLine(result),
]

/** From where on each level is met, at the least and the largest value of the second factor at which it is. */
function levelLines(result: SweepResult): string[] {
  const { factors, points, target } = result
  const [x, y] = factors as [Factor, Factor]
  const measure = gridMeasure(result)
  const but = butSomeCannotWork(points)
  const z = gridValues(result, measure.name)
  return result.grid![measure.name]!.levels.flatMap((level) => {
    const met = y.values.flatMap((value, row) => {
      const [first] = crossings(x.values, z[row]!, level).filter(({ rises }) => rises)
      return first
        ? [`${valueText(first.at, x, 3)} of ${x.path} on at ${valueText(value, y)} of ${y.path}`]
        : []
    })
    const what =
      measure.name === heldName && target !== null
        ? `${meanText(level, measure, result)} of the shifts reach ${rateText(target)}`
        : `${measureSubject(measure)}, ${meanText(level, measure, result)}`
    if (met.length > 0) return [`${what} from about ${listed([...new Set([met[0]!, met.at(-1)!])])}${but}.`]
    return z.flat().every((value) => !(value >= level)) ? [`${what} at no point tried.`] : []
  })
}

function butSomeCannotWork(points: readonly SweepPoint[]): string {
  const failing = points.filter(({ errors }) => errors).length
  if (failing === 0) return ''
  const where = failing === points.length ? 'every point' : `${failing} of the ${points.length} points`
  return `; but at ${where} the line cannot work as described`
}

function highestLine(result: SweepResult): string {
  const { factors, points, base } = result
  const measure = gridMeasure(result)
  const { name } = measure
  const mean = ({ measures }: SweepPoint) => measures[name]?.mean ?? null
  const best = points.filter((point) => mean(point) !== null).reduce((a, b) => (mean(b)! > mean(a)! ? b : a))
  return `${measureSubject(measure)}: highest with ${placeOf(best.at, factors)}, ${pointText(best.measures[name], name, result)}${butThere(best)}; as the scenario stands ${pointText(base[name], name, result)}.`
}

function cheapestLine(result: SweepResult): string[] {
  const { factors, points, measures } = result
  if (!measures.some(({ name }) => name === costName)) return []
  if (isCostInPart(result)) return [besideCost(result)]
  if (gridMeasure(result).name === costName) return []
  const cost = (point: SweepPoint) => point.measures[costName]?.mean ?? Infinity
  const cheapest = points.reduce((a, b) => (cost(b) < cost(a) ? b : a))
  const held = pointText(cheapest.measures[heldName], heldName, result)
  const where = held === nothing ? '' : `, where the target is reached in ${held}`
  return [
    `${costWords('1000 cases', result)} cost least with ${placeOf(cheapest.at, factors)}, ${pointText(cheapest.measures[costName], costName, result)}${butThere(cheapest)}${where}.`,
  ]
}

/** Most columns of figures beside each other; all stand in designs.csv. */
const mostColumns = 12

/** The tables of a grid: where each level is crossed, and the figures of the measure. */
export function gridTables(result: SweepResult): Table[] {
  const { factors, points } = result
  const [x, y] = factors as [Factor, Factor]
  return [
    crossingTable(result, x, y),
    ...result.measures.map((measure): Table => {
      const every = Math.ceil(x.values.length / mostColumns)
      const shown = x.values.filter((_, index) => index % every === 0)
      return {
        title: `${measureSubject(measure)} over both`,
        note: `Across: ${x.path}. Down: ${y.path}.${every > 1 ? ' designs.csv has every point.' : ''}`,
        columns: [
          ...words(y.path),
          ...figures(
            ...shown.map((value) => {
              const minutes = x.minutes?.[x.values.indexOf(value)]
              return `${valueText(value, x)}${minutes === undefined ? '' : `, ${grouped(minutes, 1)} min`}`
            }),
          ),
        ],
        behind: 'grid',
        rows: y.values.map((row) => [
          valueText(row, y),
          ...shown.map((column) =>
            pointCell(gridPoint(points, column, row)?.measures[measure.name], measure.name),
          ),
        ]),
      }
    }),
  ]
}

/** For each value of the second factor the first at which each level is met, interpolated between two that were tried. */
function crossingTable(result: SweepResult, x: Factor, y: Factor): Table {
  const measure = gridMeasure(result)
  const { levels } = result.grid![measure.name]!
  const z = gridValues(result, measure.name)
  const cell = (row: readonly number[], level: number): Cell => {
    const met = crossings(x.values, row, level)
    if (met.length > 0)
      return met.flatMap(({ at, from, rises }, index): Parts => {
        const tried = `(${x.values[from]} to ${x.values[from + 1]})`
        return [
          `${rises ? 'from' : 'up to'} ${valueText(at, x, 3)}`,
          index < met.length - 1 ? `${tried},` : tried,
        ]
      })
    const known = row.filter((value) => !Number.isNaN(value))
    if (known.length === 0) return null
    return known.every((value) => value >= level) ? 'at all' : 'at none'
  }
  return {
    title: `Where ${measureWords(measure)} crosses each level: ${x.path} for each ${y.path}`,
    note: 'Interpolated; in brackets: the two nearest values tried.',
    columns: [...words(y.path), ...figures(...levels.map((level) => meanText(level, measure, result)))],
    behind: 'grid',
    rows:
      levels.length === 0
        ? []
        : y.values.map((value, row) => [valueText(value, y), ...levels.map((level) => cell(z[row]!, level))]),
  }
}
