/** The events of one shift as lines: words for people, JSON for programs. */

import { shiftCells, shiftColumns } from '../../answers/csv.js'
import { causes } from '../../catalogue/causes.js'
import { stateLabel } from '../../catalogue/states.js'
import type { Column, ShiftResult } from '../../line/line.js'
import type { ShiftEvent } from '../../line/shift-event.js'
import type { Display } from '../../report/format.js'
import { printable } from '../../scenario/printable.js'
import { unitSize } from '../../scenario/quantity.js'

/** What is known of a trace before its first event: with this it can be made again. */
export interface TraceMade {
  version: string
  seed: string
  shift: number
  scenario: { title: string; sha256: string }
}

/** Turns the parts of a trace into text that ends with a line feed. */
export interface TraceWriter {
  head(made: TraceMade): string
  event(event: ShiftEvent): string
  /** The row of the shift, as it stands in shifts.csv. */
  row(shift: number, columns: readonly Column[], result: ShiftResult): string
}

/** Keys of an event in the order in which they are written. */
const keys = [
  'time',
  'event',
  'at',
  'case',
  'kind',
  'from',
  'state',
  'cause',
  'person',
  'task',
  'head',
  'tape',
  'lasts',
  'after',
  'as',
] as const satisfies readonly (keyof ShiftEvent)[]

/** One JSON object a line; times in seconds and lengths in metres, unrounded. */
export const jsonTrace: TraceWriter = {
  head: (made) => line({ event: 'trace', format: 'tapeshift-trace/1', ...made }),
  event: (event) => `${JSON.stringify(event, keys as unknown as string[])}\n`,
  row: (shift, columns, result) => {
    const cells = shiftCells(result)
    const row = Object.fromEntries(
      shiftColumns(columns).map((name, index) => [name, cells[index] === '' ? null : cells[index]]),
    )
    return line({ event: 'row', shift, row })
  },
}

const line = (value: unknown) => `${JSON.stringify(value)}\n`

/** A line an event: time, place, words. `places` are the names that may stand in the second column. */
export function textTrace(places: readonly string[], display: Display): TraceWriter {
  const width = Math.max(...places.map((place) => place.length))
  return {
    head: ({ scenario, shift, seed, version }) =>
      `${printable(scenario.title)}: shift ${shift} of seed ${printable(seed)}\ntapeshift ${version}, scenario sha256 ${scenario.sha256}\n\n`,
    event: (event) =>
      `${clockText(event.time).padStart(12)}  ${event.at.padEnd(width)}  ${eventWords(event, display)}\n`,
    row: (shift, columns, result) => {
      const names = shiftColumns(columns)
      const cells = shiftCells(result)
      const longest = Math.max(...names.map((name) => name.length))
      const lines = names.map((name, index) => `${name.padEnd(longest)}  ${cells[index]}`.trimEnd())
      return `\nShift ${shift} as its row in shifts.csv, unrounded, SI units:\n${lines.join('\n')}\n`
    },
  }
}

/** Time since the start of the shift as h:mm:ss.mmm, rounded to a millisecond. */
export function clockText(seconds: number): string {
  const total = Math.round(seconds * 1000)
  const two = (value: number) => String(value).padStart(2, '0')
  const [milliseconds, whole] = [total % 1000, Math.floor(total / 1000)]
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}.${String(milliseconds).padStart(3, '0')}`
}

const duration = (seconds: number | undefined) => `${Number((seconds ?? 0).toFixed(3))} s`

function tapeLength(metres: number | undefined, display: Display): string {
  const [size, unit] = display === 'us' ? [unitSize('length', 'ft'), 'ft'] : [1, 'm']
  return `${((metres ?? 0) / size).toFixed(3)} ${unit}`
}

/** What happens, in words; who does it, if not the crew, is the place of the event. */
export function eventWords(event: ShiftEvent, display: Display): string {
  const item = `case ${event.case}`
  switch (event.event) {
    case 'arrives':
      return `${item} (${event.kind}) arrives`
    case 'waits':
      return `${item} waits for room on the line`
    case 'queues':
      return `${item} stands on the floor`
    case 'turned-away':
      return `${item} is turned away`
    case 'taken':
      return `takes ${item}${event.from === undefined ? '' : ` from ${event.from}`}`
    case 'on-belts':
      return `${item} goes onto the belts`
    case 'service-begins':
      return `begins with ${item}, for ${duration(event.lasts)}`
    case 'planned-stop':
      return `planned stop begins, for ${duration(event.lasts)}`
    case 'strip-laid':
      return `${event.head} head lays ${tapeLength(event.tape, display)} of tape on ${item}`
    case 'passes-unsealed':
      return `${event.head} head is out of tape and lets ${item} pass`
    case 'tape-breaks':
      return `${event.head} head's tape breaks at ${item}`
    case 'jams':
      return `${item} jams`
    case 'freed':
      return `${item} is freed`
    case 'spoilt':
      return `${item} is spoilt and taken out`
    case 'strip-spoilt':
      return `${item} stands under the ${event.head} head: its strip is spoilt`
    case 'rejected':
      return `rejects ${item}`
    case 'leaves':
      return `${item} leaves the line${event.as === 'good' ? '' : `, ${event.as}`}, ${duration(event.after)} after it arrived`
    case 'state':
      // a colon has one meaning here
      return `state: ${stateLabel(event.state!, ', ')}`
    case 'stops':
      return `stops: ${causes[event.cause!].one}`
    case 'sets-out':
      return `${event.person} sets out: ${event.task}`
    case 'work-begins':
      return `${event.person} is there and begins, for ${duration(event.lasts)}: ${event.task}`
    case 'work-done':
      return `${event.person} is done: ${event.task}`
    case 'roll-changed':
      return `${event.head} head has a new roll`
    case 'blade-serviced':
      return `${event.head} head has its blade serviced`
    case 'post-manned':
      return `somebody of ${event.person} stands at the post`
    case 'post-left':
      return `nobody of ${event.person} stands at the post`
    case 'break-begins':
      return 'a break begins'
    case 'break-ends':
      return 'the break ends'
    case 'start-up-ends':
      return 'the line is started up'
    case 'arrivals-end':
      return 'arrivals end'
  }
}
