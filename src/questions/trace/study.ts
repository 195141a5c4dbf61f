/** What happened in one shift, event by event? Simulates it and tells it as text or as JSON while it runs. */
import { quantityWritten } from '../../answers/requirement.js'
import { Line } from '../../line/line.js'
import type { ShiftEvent } from '../../line/shift-event.js'
import { type Fault, isFault, misuse, readAt } from '../../scenario/fault.js'
import { nearest } from '../../scenario/nearest.js'
import { shown } from '../../scenario/printable.js'
import type { ReadScenario } from '../../scenario/read.js'
import type { Scenario } from '../../scenario/schema.js'
import { inProcess } from '../../shifts/in-process.js'
import { findWarmUp, unsettled } from '../../shifts/steady.js'
import { version } from '../../version.js'
import { clockText, jsonTrace, type TraceMade, textTrace } from './events.js'
import { type TraceChoice, traceFilter } from './filter.js'
import { CaseStory } from './story.js'

export interface TraceOptions {
  /** Number of the shift, from 1. */
  shift: number
  /** Only this case, numbered in order of arrival from 1, and the stops of the piece that it is in. */
  case?: number | undefined
  /** Only these places. */
  equipment?: readonly string[] | undefined
  /** Only from this time of the shift on, such as `1 h`, and only until that one. */
  from?: string | undefined
  to?: string | undefined
  /** One JSON object a line, times in seconds, unrounded. */
  json?: boolean | undefined
}

/** Simulated seconds between two parts of the text. */
const step = 60

/**
 * The text, in parts as the shift goes on: `until` is how far it has come, s. It ends with the row of the shift, or, in words of one case, with
 * its story. Throws `Fault`; of a standstill what led to it comes before.
 */
export async function* trace(
  loaded: ReadScenario,
  options: TraceOptions,
): AsyncGenerator<{ text: string; until: number }> {
  const { scenario, sha256 } = loaded
  const line = new Line(scenario)
  const [from, to] = [timeOf('--from', options.from), timeOf('--to', options.to)]
  const choice = choiceOf(options, { from, to }, Object.keys(scenario.line), line.end)
  const { seed } = scenario.study
  if (scenario.shift.start === 'steady') {
    // its row is that of the study, which counts from the end of the warm-up
    const warmUp = await findWarmUp(inProcess(), { seed, scenario, design: 0 })
    if (!warmUp.isSettled) throw unsettled(warmUp, scenario)
    line.countFrom = warmUp.countFrom
  }
  const made = { version, seed, shift: options.shift, scenario: { title: scenario.title, sha256 } }
  const writer = options.json ? jsonTrace : textTrace(placesOf(scenario), scenario.display)
  const isShown = traceFilter(choice)
  // a story in words ends with what the case stood for; the row of the shift would be four times as long
  const story = choice.case === undefined || options.json ? null : new CaseStory(choice.case, scenario)
  let arrived = 0
  let hasBegun = false
  let parts: string[] = []
  // nothing is told before there is something to show
  const tell = (text: string) => {
    if (!hasBegun) parts.push(writer.head(made))
    hasBegun = true
    parts.push(text)
  }
  const taken = (until: number) => {
    const text = parts.join('')
    parts = []
    return { text, until }
  }
  line.observe((event: ShiftEvent) => {
    if (event.event === 'arrives') arrived++
    story?.take(event)
    if (isShown(event)) tell(writer.event(event))
  })
  let until = 0
  try {
    const shift = line.simulateInSteps(seed, options.shift, step)
    let at = shift.next()
    for (; !at.done; at = shift.next()) {
      until += step
      yield taken(until)
    }
    if (choice.case !== undefined && choice.case > arrived) throw neverArrives(choice.case, arrived, made)
    // the row is that of the shift as a study has it, whom nobody looks at: it has the same digits
    line.observe(null)
    tell(
      story?.words(line.end) ?? writer.row(options.shift, line.columns, line.simulate(seed, options.shift)),
    )
    yield taken(until)
  } catch (error) {
    // where the line comes to a standstill, what led to it is what is wanted
    if (isFault(error, 'standstill')) yield taken(until)
    throw error
  } finally {
    line.observe(null)
  }
}

/** A time of the shift, s; undefined where the option is not given. */
function timeOf(option: string, text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  return readAt(`${option} ${shown(text)}`, () => {
    const time = quantityWritten(text, 'time')
    if (time >= 0) return time
    throw misuse('a time of the shift counts from its start; 0 s is the first')
  })
}

/** Where events may happen: the shift, crews with breaks or other work of their own, sources and pieces. */
function placesOf({ arrivals, crew, line }: Scenario): string[] {
  const crews = Object.keys(crew).filter((name) => crew[name]!.breaks || crew[name]!['other-work'])
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
    throw misuse(`there is no piece \`${shown(unknown)}\` in the line; ${nearest(unknown, known)}`)
  if (from > to)
    throw misuse(`--from ${shown(options.from)} comes after --to ${shown(options.to)}: exchange the two`)
  if (from > end)
    throw misuse(
      `--from ${shown(options.from)} comes after the end, ${clockText(end)} from the start: an earlier time`,
    )
  return { equipment, from, to, ...(options.case === undefined ? {} : { case: options.case }) }
}

function neverArrives(number: number, arrived: number, { shift, seed }: TraceMade): Fault {
  const known =
    arrived === 0 ? 'no case arrives' : `the last one is case ${arrived}: did you mean \`${arrived}\`?`
  return misuse(`case ${number} never arrives in shift ${shift} of seed ${shown(seed)}; ${known}`)
}
