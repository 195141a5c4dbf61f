/** The catalogue holds every measure that the lines of the demos have, with a meaning; the words of results come from nowhere else. */
import { describe, expect, it } from 'vitest'
import { figuresAt } from '../../src/answers/figure-at.js'
import { measureName, studyMeasures } from '../../src/answers/figures.js'
import { causeKeys } from '../../src/catalogue/causes.js'
import { costElementKeys, costKey } from '../../src/catalogue/costs.js'
import { entryAt, type MeasureName } from '../../src/catalogue/measures.js'
import { ofEffectiveness, ofHeads, ofPieces, pieceRow, sentKey } from '../../src/catalogue/of-equipment.js'
import { lineRow, type MeasureKey, ofLine } from '../../src/catalogue/of-line.js'
import { ofArrivals, ofCrew } from '../../src/catalogue/of-people.js'
import type { NamedRow } from '../../src/catalogue/row.js'
import { stateKeys, stateRow } from '../../src/catalogue/states.js'
import { Line } from '../../src/line/line.js'
import type { RunResult } from '../../src/questions/run/document.js'
import { call } from '../cli/in-process.js'
import { demoFolder, demos, loadDemo } from '../demo.js'

/** Rows of what has a name, by the place of their measures in documents. */
const named: Record<string, Record<string, NamedRow>> = {
  'arrivals.NAME': ofArrivals,
  'crew.NAME': ofCrew,
  'equipment.NAME.measures': { ...ofPieces, [sentKey('TARGET')]: pieceRow(sentKey('TARGET')) },
  'equipment.NAME.states': Object.fromEntries(stateKeys.map((key) => [key, stateRow(key)])),
  'equipment.NAME.heads.HEAD': ofHeads,
  'equipment.NAME.effectiveness': ofEffectiveness,
}
const places = [
  ...Object.keys(ofLine).map((key) => `measures.${key}`),
  ...Object.entries(named).flatMap(([place, rows]) => Object.keys(rows).map((key) => `${place}.${key}`)),
]

/**
 * The words of the row for a figure at `path`; a place that holds cases may be told of in several ways. `name`: of the piece,
 * or of several side by side.
 */
function labelsAt(path: readonly string[], name: string): string[] {
  const [room, , , head] = path
  const key = path.at(-1)!
  if (room === 'measures') return [ofLine[key as MeasureKey].label]
  const place = entryAt(path).place
  const rows = named[place.slice(0, place.lastIndexOf('.'))]!
  const row = key.startsWith(sentKey('')) ? pieceRow(sentKey(key.slice(3))) : rows[key]!
  const told = path[2] === 'heads' ? `${name} ${head} head` : name
  return [`in ${name}`, `on ${name}`, `at ${name}, waiting and in work`].map((where) =>
    row.label(told, where),
  )
}

const columnsOf = await Promise.all(
  demos.map(async (demo) => {
    const scenario = await loadDemo(demo)
    return studyMeasures(new Line(scenario).columns, scenario.shift.campaign)
  }),
)

describe.each(demos)('the document of %s', async (demo) => {
  const argv = ['run', `${demo}.yaml`, '--json', '--no-files', '--workers', '1', '--shifts', '2']
  const { out } = await call(argv, { cwd: demoFolder })
  const result = JSON.parse(out) as RunResult
  const figures = figuresAt(result)
  const namesAt = ([room, name = '']: readonly string[]): string[] => {
    const { pieces } = (room === 'equipment' && result.equipment[name]) || {}
    return pieces ? [`${name} (all ${pieces.length})`, `${name} (mean of ${pieces.length})`] : [name]
  }

  it('has a row and a meaning for every figure', () => {
    expect(figures.filter(([path]) => entryAt(path).meaning === '')).toEqual([])
    expect(figures.filter(([path]) => !places.includes(entryAt(path).place))).toEqual([])
  })

  it('has the words of the row in every figure', () => {
    expect(
      figures.filter(
        ([path, { label }]) => !namesAt(path).some((name) => labelsAt(path, name).includes(label)),
      ),
    ).toEqual([])
  })
})

describe('the catalogue', () => {
  it('has no row that no line of a demo has', () => {
    const used = new Set(columnsOf.flat().map(({ path }) => entryAt(path).place))
    expect(places.filter((place) => !used.has(place))).toEqual([])
  })

  it('says of everything what it means, in words of its own within each place', () => {
    expect(places.filter((place) => entryAt(place.split('.')).meaning === '')).toEqual([])
    expect(new Set(Object.values(ofLine).map(({ label }) => label)).size).toBe(Object.keys(ofLine).length)
    for (const rows of Object.values(named)) {
      const labels = Object.values(rows).map(({ label }) => label('a', 'in a'))
      expect(new Set(labels).size).toBe(labels.length)
    }
  })

  it('knows measures by the names that people give for them', () => {
    const names: MeasureName[] = ['throughput', 'equipment.sealer.jams-stop', 'crew.operator.busy']
    const known = columnsOf.flat().map(measureName)
    expect(names.filter((name) => !known.includes(name))).toEqual([])
    expect(lineRow('equipment.sealer.jams')).toBeUndefined()
    expect(lineRow('constructor')).toBeUndefined()
  })

  it('has a measure for each cause and element of cost', () => {
    expect(causeKeys.filter((key) => !(key in ofPieces))).toEqual([])
    expect(costElementKeys.map((key) => ofLine[costKey(key)].label)).toHaveLength(costElementKeys.length)
  })
})
