/** The work of `tapeshift trace`: simulates one shift and writes its events while it runs. */
import { once } from 'node:events'
import { Line, type ShiftResult } from '../line/line.js'
import type { ShiftEvent } from '../line/shift-event.js'
import { Standstill } from '../line/standstill.js'
import {
  clockText,
  jsonTrace,
  type TraceMade,
  type TraceWriter,
  textTrace,
} from '../questions/trace/events.js'
import { type TraceChoice, traceFilter } from '../questions/trace/filter.js'
import { nearest } from '../scenario/nearest.js'
import { shown } from '../scenario/problems.js'
import { parseQuantity } from '../scenario/quantity.js'
import type { Scenario } from '../scenario/schema.js'
import { workersHere } from '../shifts/here.js'
import { findWarmUp } from '../shifts/steady.js'
import { exits, type Io, UsageError } from './io.js'
import { loadForCommand } from './scenario.js'
import type { TraceOptions } from './trace.js'
import { UnsettledError } from './unsettled.js'
import { version } from './version.js'

/** Simulated seconds between two looks at the reader and at interrupts. */
const step = 60

/** Writes the shift that is asked for; returns the exit code. */
export async function trace(name: string, options: TraceOptions, io: Io): Promise<number> {
  const [from, to] = [timeOf('--from', options.from), timeOf('--to', options.to)]
  const { scenario, sha256 } = await loadForCommand(name, options, io)
  const line = new Line(scenario)
  const choice = choiceOf(options, { from, to }, Object.keys(scenario.line), line.end)
  const { seed } = scenario.study
  if (scenario.shift.start === 'steady') {
    // its row is that of the study, which counts from the end of the warm-up
    const warmUp = await findWarmUp(workersHere(), { seed, scenario, design: 0 })
    if (!warmUp.isSettled) throw new UnsettledError(warmUp, scenario)
    line.countFrom = warmUp.countFrom
  }
  const made = { version, seed, shift: options.shift, scenario: { title: scenario.title, sha256 } }
  const writer = options.json ? jsonTrace : textTrace(placesOf(scenario), scenario.display)
  return writeTrace(line, made, choice, writer, io)
}

/** A time of the shift, s; undefined where the option is not given. */
function timeOf(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const parsed = parseQuantity(text, 'time')
  if (!('value' in parsed)) throw new UsageError(`${option} ${shown(text)}: ${parsed.rule}; ${parsed.fix}`)
  if (parsed.value < 0)
    throw new UsageError(
      `${option} ${shown(text)}: a time of the shift counts from its start; 0 s is the first`,
    )
  return parsed.value
}

/** Where events may happen: the shift, crews with breaks of their own, sources and pieces. */
function placesOf({ arrivals, crew, line }: Scenario): string[] {
  const crews = Object.keys(crew).filter((name) => crew[name]!.breaks)
  return ['shift', ...crews.map((name) => `crew.${name}`), ...Object.keys(arrivals), ...Object.keys(line)]
}

/** The filters, held against the line: one that nothing can pass is an error. */
function choiceOf(
  options: TraceOptions,
  { from = 0, to = Infinity }: { from: number | undefined; to: number | undefined },
  known: readonly string[],
  end: number,
): TraceChoice {
  const equipment = options.equipment ?? []
  const unknown = equipment.find((each) => !known.includes(each))
  if (unknown !== undefined)
    throw new UsageError(`there is no piece \`${shown(unknown)}\` in the line; ${nearest(unknown, known)}`)
  if (from > to)
    throw new UsageError(
      `--from ${shown(options.from)} comes after --to ${shown(options.to)}: exchange the two`,
    )
  if (from > end)
    throw new UsageError(
      `--from ${shown(options.from)} comes after the end, ${clockText(end)} from the start: an earlier time`,
    )
  return { equipment, from, to, ...(options.case === undefined ? {} : { case: options.case }) }
}

/** Simulates the shift and writes while it runs; returns the exit code. Nothing is written before there is something to show. */
async function writeTrace(
  line: Line,
  made: TraceMade,
  choice: TraceChoice,
  writer: TraceWriter,
  io: Io,
): Promise<number> {
  const isShown = traceFilter(choice)
  let arrived = 0
  let hasBegun = false
  let parts: string[] = []
  const begin = () => {
    if (!hasBegun) parts.push(writer.head(made))
    hasBegun = true
  }
  line.observe((event: ShiftEvent) => {
    if (event.event === 'arrives') arrived++
    if (!isShown(event)) return
    begin()
    parts.push(writer.event(event))
  })
  const flush = async () => {
    const text = parts.join('')
    parts = []
    if (text !== '' && !io.stdout.write(text)) await once(io.stdout, 'drain')
    else await new Promise((resolve) => setImmediate(resolve))
  }
  let isCancelled = false
  const stopListening = io.onInterrupt(() => {
    isCancelled = true
  })
  try {
    const shift = line.simulateInSteps(made.seed, made.shift, step)
    let at = shift.next()
    for (let steps = 1; !at.done; steps++) {
      await flush()
      if (isCancelled) {
        io.stderr.write(`interrupted at ${clockText(steps * step)} of the shift\n`)
        return exits.interrupted
      }
      at = shift.next()
    }
    if (choice.case !== undefined && choice.case > arrived) throw neverArrives(choice.case, arrived, made)
    begin()
    parts.push(writer.row(made.shift, line.columns, at.value as ShiftResult))
    await flush()
    return exits.done
  } catch (error) {
    // where the line comes to a standstill, what led to it is what is wanted
    if (error instanceof Standstill) await flush()
    throw error
  } finally {
    stopListening()
    line.observe(null)
  }
}

function neverArrives(number: number, arrived: number, { shift, seed }: TraceMade): UsageError {
  const known =
    arrived === 0 ? 'no case arrives' : `the last one is case ${arrived}: did you mean \`${arrived}\`?`
  return new UsageError(`case ${number} never arrives in shift ${shift} of seed ${shown(seed)}; ${known}`)
}
