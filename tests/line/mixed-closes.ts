/** What must hold of any shift of any line, however much it mixes: balances, shares of time, and that being looked at changes nothing. */
import type { Line, ShiftResult } from '../../src/line/line.js'
import type { ShiftEvent } from '../../src/line/shift-event.js'
import { DeadlockError } from '../../src/line/standstill.js'
import { type Mixed, mixedLine } from './mixed.js'

/** Rounding of a sum of shares. */
const hair = 1e-9

/** What is wrong with the figures of a shift, or null. */
function figuresFault(line: Line, { values }: ShiftResult): string | null {
  const shares = new Map<string, number>()
  for (const [index, { measure, part }] of line.columns.entries()) {
    const value = values[index]!
    const name = measure.path.join('.')
    if (value === Infinity || value < 0) return `${name} is ${value}`
    if (part === 'over') continue
    // a piece is always in one state, and a person at the line or at other work, never at both
    const isOfState = measure.path[2] === 'states'
    const isOfPeople = measure.path[0] === 'crew' && ['busy', 'other-work'].includes(measure.path.at(-1)!)
    if (isOfState || isOfPeople)
      shares.set(
        `${measure.path[0]}.${measure.path[1]}`,
        (shares.get(`${measure.path[0]}.${measure.path[1]}`) ?? 0) + value,
      )
  }
  for (const [name, sum] of shares)
    if (sum > 1 + hair || (name.startsWith('equipment') && sum < 1 - hair))
      return `shares of ${name} are ${sum}`
  return null
}

/** The columns of a result as they stand, byte for byte, or the words of a line that locks. */
function simulated(line: Line, shift: number): ShiftResult | string {
  try {
    // throws when a balance does not close
    return line.simulate('mixed', shift)
  } catch (error) {
    if (error instanceof DeadlockError) return error.message
    throw error
  }
}

/** What is wrong in shift or campaign `shift` of a line, or null; `locked` where it locks, as a line with a repair loop may. */
export function mixedFault(given: Mixed, shift: number): string | null {
  const line = mixedLine(given)
  const result = simulated(line, shift)
  if (typeof result === 'string') return /-bench:/.test(given.text) ? 'locked' : result
  return figuresFault(line, result)
}

const sameBytes = (a: Float64Array, b: Float64Array) =>
  Buffer.from(a.buffer, a.byteOffset, a.byteLength).equals(Buffer.from(b.buffer, b.byteOffset, b.byteLength))

/** Whether the same shift comes out of another line of this scenario that is told event by event, part by part, after other shifts. */
export function traceFault(given: Mixed, shift: number): string | null {
  const studied = mixedLine(given)
  const alone = simulated(studied, shift)
  if (typeof alone === 'string') return null
  const line = mixedLine(given)
  simulated(line, shift + 1)
  const events: ShiftEvent[] = []
  line.observe((event) => events.push(event))
  const parts = line.simulateInSteps('mixed', shift, 77)
  let part = parts.next()
  while (!part.done) part = parts.next()
  const told = part.value
  for (const key of ['values', 'held', 'outputs', 'controls'] as const)
    if (!sameBytes(told[key], alone[key])) return `${key} differ where it is told`
  const from = line.countFrom
  const good = events.filter(
    ({ event, as, time }) => event === 'leaves' && as === 'good' && time > from,
  ).length
  const counted = alone.outputs.reduce((sum, output) => sum + output, 0)
  // of a case that leaves at the instant at which counting begins the one says before, the other after
  const onTheCut = events.filter(({ event, time }) => event === 'leaves' && time === from).length
  if (Math.abs(good - counted) > onTheCut) return `${good} good cases told, ${counted} counted`
  return null
}
