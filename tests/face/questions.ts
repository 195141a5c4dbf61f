/** What a program may ask of the public face, written so that it runs in Node and in a browser alike. */
import type * as Face from '../../src/index.js'

/** A line of laws that need no logarithm: arithmetic alone is the same in any engine, to the last digit. */
export const plainLine = `title: A line of plain laws
target: 6 cases/min
cases: {a: {length: 420 mm, width: 310 mm, height: 260 mm}}
arrivals: {packing: {time-between: {triangular: {low: 4 s, mode: 7 s, high: 12 s}}}}
line:
  infeed: {type: conveyor, length: 6 m}
  sealer:
    type: sealer
    jams: {chance: 1 %, clear: {triangular: {low: 20 s, mode: 60 s, high: 200 s}}}
  palletiser: {type: station, time: {triangular: {low: 3 s, mode: 4 s, high: 6 s}}}
shift: {length: 2 h}
variants: {three-inch: {note: a longer infeed, set: {line.infeed.length: 9 m}}}
`

/** Asks all questions of a scenario, and gives back everything that is answered. */
export async function askAll(face: typeof Face, text: string) {
  const line = face.loadScenario(text, { name: 'line.yaml' })
  const answers = {
    run: await face.run(line, { shifts: 6 }),
    compare: await face.compare(line, { variants: ['three-inch'], shifts: 6, seed: 'other' }),
    size: await face.size(line, {
      choose: ['line.infeed.length=4..6/2 m'],
      holds: ['throughput >= 5 cases/min within 0.5 cases/min'],
      most: 60,
    }),
    sweep: await face.sweep(line, { vary: ['line.infeed.length=4..8/2 m'], shifts: 5 }),
  }
  let trace = ''
  for await (const { text: part } of face.trace(line, { shift: 2, to: '10 min' })) trace += part
  const documents = Object.values(answers).map(({ document }) => document)
  const told = {
    check: face.check(line),
    documents,
    throughput: answers.run.figure('throughput'),
    jams: answers.run.figure('equipment.sealer.jams'),
    difference: answers.compare.difference('three-inch', 'throughput'),
    rows: Object.values(answers).map((answer) => [...face.toCsv(answer)]),
    pages: documents.map((document) => face.toPage(document)),
    trace,
  }
  return told
}

/** Any number within a text. */
const numbers = /-?\d+(?:[.\u2009]\d+)*(?:e[+-]?\d+)?/g

/**
 * The first place where two answers part, null where there is none: all texts are the same but for numbers, hashes and what names the
 * program that runs it, and all numbers of documents and of rows are, of 1 and more, within `hair` of themselves.
 */
export function partingOf(here: unknown, there: unknown, hair: number): string | null {
  const [one, other] = [here, there].map((told) =>
    JSON.stringify(told).replace(/"node\\*":\\*"[^"]*"|on Node [\w. ]*(?=[,.])|'sha256-[^']*'/g, ''),
  ) as [string, string]
  const [texts, others] = [one.split(numbers), other.split(numbers)]
  const text = texts.findIndex((part, index) => part !== others[index])
  if (text >= 0) return `${texts[text]} and ${others[text]}`
  const [found, expected] = [one.match(numbers)!, other.match(numbers)!]
  const at = found.findIndex((figure, index) => {
    const [a, b] = [Number(figure), Number(expected[index])]
    // what is printed with few digits may be rounded the other way
    const digits = figure.replace(/\D/g, '').length
    return (
      figure !== expected[index] &&
      digits > 12 &&
      !(Math.abs(a - b) <= hair * Math.max(1, Math.abs(a), Math.abs(b)))
    )
  })
  return at < 0 ? null : `${found[at]} and ${expected[at]}`
}
