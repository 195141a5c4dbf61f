/** What the logged inputs of a record come to: values with their evidence, how laws fit, what tests say. */
import type { LoggedInput, LoggedMix } from '../../record/input.js'
import type { CleanRecord } from '../../record/record.js'
import { countInput, timeToInput } from './counted.js'
import type { FittedInput } from './document.js'
import { type Laws, type LawsAsked, lawsOf } from './laws.js'
import { noted, remarksOfTests } from './remarks.js'
import { judged, testsOf } from './tests.js'
import { timesInput } from './timed.js'

/** How it was asked. */
export interface Asked extends LawsAsked {
  /** Time that pieces worked, s, as far as it is known. */
  work: ReadonlyMap<string, number>
}

/** Inputs, and the CSV texts that some of their values draw on. */
export interface FittedInputs {
  inputs: FittedInput[]
  observed: Map<string, string>
}

/** All inputs of a record, tests judged together. */
export function fittedInputs(
  record: CleanRecord,
  logged: readonly LoggedInput[],
  asked: Asked,
): FittedInputs {
  const laws = new Map<string, Laws>()
  for (const input of logged)
    if (input.what === 'times' || input.what === 'time-to' || input.what === 'time-between')
      laws.set(input.path, lawsOf(input.sample, input.path, asked))
  const observed = new Map<string, string>()
  const inputs = logged.flatMap((input): FittedInput[] => fitted(input, laws, observed, asked))
  const shifts = record.shifts.flatMap(({ isHeldOut }, shift) => (isHeldOut ? [] : [shift]))
  const tests = judged(logged.map((input) => testsOf(input, shifts, asked.seed)))
  const paths = logged.map(({ path }) => path)
  return {
    observed,
    inputs: inputs.map((input) => {
      const own = tests[paths.indexOf(input.path)] ?? []
      return { ...input, tests: own, remarks: [...input.remarks, ...remarksOfTests(own)] }
    }),
  }
}

function fitted(
  input: LoggedInput,
  laws: ReadonlyMap<string, Laws>,
  observed: Map<string, string>,
  asked: Asked,
): FittedInput[] {
  switch (input.what) {
    case 'chance':
      return [countInput(input, lengthsOf(input.path, laws), asked)]
    case 'time-to':
      return [timeToInput(input, laws.get(input.path)!, lengthsOf(input.path, laws), asked)]
    case 'times':
    case 'time-between':
      return [timesInput(input, laws.get(input.path)!, observed, asked)]
    case 'mix':
      return sharesOf(input)
  }
}

/** The law of how long the stops last that a count is of: what lies below `seenFrom` was not counted. */
function lengthsOf(path: string, laws: ReadonlyMap<string, Laws>): Laws | null {
  const stop = path.slice(0, path.lastIndexOf('.'))
  const times = [...laws].find(([each]) => each !== path && each.slice(0, each.lastIndexOf('.')) === stop)
  return times !== undefined && times[1].choice.chosen !== null ? times[1] : null
}

/** A share for each kind of case, in per cent of the cases that were seen. */
function sharesOf({ kinds, words, notes }: LoggedMix): FittedInput[] {
  const all = kinds.reduce((sum, { count }) => sum + count, 0)
  return kinds.map(({ name, count }) => ({
    path: `cases.${name}.share`,
    words: `${words}: ${name}`,
    what: 'mix',
    ...{ events: count, cutOff: 0, exposure: { value: all, unit: 'cases' } },
    value: String(Number(((100 * count) / all).toPrecision(4))),
    also: {},
    restsOn: 'counted',
    ...{ rate: null, mean: null, seen: null, chosen: null, alike: [], families: [], tests: [] },
    remarks: noted(notes),
    pictures: { quantiles: [], histogram: null, survival: null, trend: [], hours: [] },
  }))
}
