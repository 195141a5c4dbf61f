/** Two unreliable machines with a buffer between them: the discrete line against the published continuous-flow results. */
import { describe, it } from 'vitest'
import { expectAround, simulate } from './run.js'

/** A time unit of the formulas: 60 s, in which a machine makes 20 cases of 3 s each; fine enough to pass for a flow. */
const unit = 60
const cycle = 3

interface Machine {
  /** Breakdowns and repairs in a time unit. */
  fails: number
  mends: number
}

const machine = ({ fails, mends }: Machine, clock: string, room: number) =>
  `{type: station, time: ${cycle} s, waiting-room: ${room}, breakdowns: {after: {exponential: {mean: ${unit / fails} s}}, counted-in: ${clock}, repair: {exponential: {mean: ${unit / mends} s}}}}`

/** Output in cases a cycle: the efficiency of the line. `buffer` in time units of flow. */
async function efficiency(
  first: Machine,
  second: Machine,
  buffer: number,
  clock: string,
  expected: number,
): Promise<void> {
  const result = await simulate({
    arrivals: '{stock: {time-between: 50 ms, when-full: wait}}',
    line: `{a: ${machine(first, clock, 2)}, b: ${machine(second, clock, (buffer * unit) / cycle)}}`,
    crew: '{fitters: {people: 2, does: [breakdowns]}}',
    length: '100 h',
    shifts: 40,
  })
  // the line starts empty and sound, which in 100 h is worth less than a tenth of the half-width
  expectAround(result.measures.throughput, expected / cycle, 0.01)
}

const sound: Machine = { fails: 0.01, mends: 0.1 }
const worse: Machine = { fails: 0.02, mends: 0.1 }

describe('failures on running time', () => {
  // Zimmern 1956, Sevast'yanov 1962; Gershwin, Manufacturing Systems Engineering (1994), continuous-material model; numbers
  // evaluated from the closed formula
  it.each([
    { buffer: 1, expected: 0.8369695 },
    { buffer: 10, expected: 0.8587258 },
    { buffer: 50, expected: 0.887574 },
  ])('equal machines, $buffer time units of buffer: $expected', async ({ buffer, expected }) => {
    await efficiency(sound, sound, buffer, 'running-time', expected)
  })

  it('a worse second machine, and the same line the other way round: 0.7989152', async () => {
    await efficiency(sound, worse, 10, 'running-time', 0.7989152)
    await efficiency(worse, sound, 10, 'running-time', 0.7989152)
  })
})

describe('failures on the calendar', () => {
  // Li & Meerkov, Production Systems Engineering (2009), exponential machines (book from memory; numbers evaluated from the
  // formula)
  it.each([
    { buffer: 10, expected: 0.8557718 },
    { buffer: 50, expected: 0.8870523 },
  ])('equal machines, $buffer time units of buffer: $expected', async ({ buffer, expected }) => {
    await efficiency(sound, sound, buffer, 'calendar-time', expected)
  })
})

describe('the deterministic model, one case a cycle', () => {
  // Gershwin & Schick, Operations Research 31 (1983); Gershwin (1994), ch. 3: constant equal cycles, failures and repairs geometric
  // in cycles (p = 0.01, r = 0.1), N places; values computed exactly from the published Markov chain. Here times are exponential
  // and a machine that is blocked holds its case, one place more: at N of 50 and above both together are worth less than
  // 0.05 % of the output (the published value moves by 0.02 % a place), well inside the interval
  it.each([
    { places: 50, expected: 0.8878447 },
    { places: 100, expected: 0.8969371 },
  ])('$places places: $expected', async ({ places, expected }) => {
    const piece = (room: number) =>
      `{type: station, time: 10 s, waiting-room: ${room}, breakdowns: {after: {exponential: {mean: 1000 s}}, repair: {exponential: {mean: 100 s}}}}`
    const result = await simulate({
      arrivals: '{stock: {time-between: 50 ms, when-full: wait}}',
      line: `{a: ${piece(2)}, b: ${piece(places)}}`,
      crew: '{fitters: {people: 2, does: [breakdowns]}}',
      length: '100 h',
      shifts: 60,
    })
    expectAround(result.measures.throughput, expected / 10, 0.01)
  })
})
