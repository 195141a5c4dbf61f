/** The events of one shift as lines: words for people, JSON for programs. */

import { shiftCells, shiftColumns } from '../../answers/csv.js'
import type { Made } from '../../answers/made.js'
import { causes } from '../../catalogue/causes.js'
import type { Display } from '../../catalogue/printed-units.js'
import { stateLabel } from '../../catalogue/states.js'
import type { Column, ShiftResult } from '../../line/line.js'
import type { EventName, ShiftEvent } from '../../line/shift-event.js'
import { printable } from '../../scenario/printable.js'
import { unitSize } from '../../scenario/quantity.js'

/** What is known of a trace before its first event: with this it can be made again. */
export interface TraceMade extends Pick<Made, 'version' | 'seed' | 'scenario'> {
  shift: number
}

/** Turns the parts of a trace into text that ends with a line feed. */
interface TraceWriter {
  head(made: TraceMade): string
  event(event: ShiftEvent): string
  /** The row of the shift, as it stands in shifts.csv. */
  row(shift: number, columns: readonly Column[], result: ShiftResult): string
}

/** Keys of an event in the order in which they are written. */
const keys = [
  ...([
    'time',
    'event',
    'at',
    'case',
    'kind',
    'length',
    'width',
    'height',
    'from',
    'state',
    'cause',
    'jam',
    'sensor',
  ] as const),
  ...(['sees', 'speed', 'person', 'task'] as const),
  ...(['head', 'tape', 'lasts', 'after', 'as'] as const),
] satisfies readonly (keyof ShiftEvent)[]

/** One JSON object a line; times in seconds and lengths in metres, unrounded. */
export const jsonTrace: TraceWriter = {
  head: (made) => line({ event: 'trace', format: 'tapeshift-trace/1', ...made }),
  event: (event) => `${JSON.stringify(event, keys)}\n`,
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
      `${clockText(event.time).padStart(10)}  ${event.at.padEnd(width)}  ${sentences[event.event](event, `case ${event.case}`, display)}\n`,
    row: (shift, columns, result) => {
      const names = shiftColumns(columns)
      const cells = shiftCells(result)
      const longest = Math.max(...names.map((name) => name.length))
      const lines = names.map((name, index) => `${name.padEnd(longest)}  ${cells[index]}`.trimEnd())
      return `\nShift ${shift} as its row in shifts.csv, unrounded, SI units:\n${lines.join('\n')}\n`
    },
  }
}

/** Time since the start of the shift as h:mm:ss.s, rounded to a tenth. */
export function clockText(seconds: number): string {
  const total = Math.round(seconds * 10)
  const two = (value: number) => String(value).padStart(2, '0')
  const whole = Math.floor(total / 10)
  return `${Math.floor(whole / 3600)}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}.${total % 10}`
}

/** A length of time as a trace says it: `0.4 s`, `12.3 s`, `2 min 10 s`, `1 h 5 min`: tenths below a minute. */
export function spell(seconds: number): string {
  const tenths = Math.round(seconds * 10)
  if (tenths < 600) return `${tenths / 10} s`
  const whole = Math.round(seconds)
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60]
  const parts = hours > 0 ? [`${hours} h`, `${minutes} min`] : [`${minutes} min`, `${whole % 60} s`]
  return parts.filter((part) => !/^0 /.test(part)).join(' ')
}

const duration = (seconds: number | undefined) => spell(seconds ?? 0)

/** Of a strip: short enough for the small unit. */
function tapeLength(metres: number | undefined, display: Display): string {
  if (display === 'us') return `${((metres ?? 0) / unitSize('length', 'in')).toFixed(1)} in`
  return `${((metres ?? 0) * 1000).toFixed(0)} mm`
}

/** Outside size of a case whose kind varies, in words. */
function sizeText({ length, width, height }: Partial<ShiftEvent>, display: Display): string {
  if (length === undefined) return ''
  const unit = display === 'us' ? 'in' : 'mm'
  const sides = [length, width, height].map((side) =>
    ((side ?? 0) / unitSize('length', unit)).toFixed(display === 'us' ? 2 : 0),
  )
  return `, ${sides.join(' x ')} ${unit}`
}

function driveSpeed(speed: number | undefined, display: Display): string {
  const unit = display === 'us' ? 'ft/min' : 'm/min'
  return `${((speed ?? 0) / unitSize('speed', unit)).toFixed(1)} ${unit}`
}

const ofJam = (jam: string | undefined) => (jam === undefined ? '' : `, ${jam}`)

/** What happens, by the name of the event, in words; who does it, if not the crew, is the place of the event. */
const sentences: Record<EventName, (event: ShiftEvent, item: string, display: Display) => string> = {
  arrives: ({ kind, ...size }, item, display) => `${item} (${kind}${sizeText(size, display)}) arrives`,
  waits: (_, item) => `${item} waits for room on the line`,
  queues: (_, item) => `${item} stands on the floor`,
  'turned-away': (_, item) => `${item} is turned away`,
  taken: ({ from }, item) => `takes ${item}${from === undefined ? '' : ` from ${from}`}`,
  'tail-held': ({ from }, item) => `${item} stands: ${from} stands and holds its tail`,
  'tail-let-go': ({ from }, item) => `${item} moves on: ${from} has let go of its tail`,
  'on-belts': (_, item) => `${item} goes onto the belts`,
  'service-begins': ({ lasts }, item) => `begins with ${item}, for ${duration(lasts)}`,
  'planned-stop': ({ lasts }) => `planned stop begins, for ${duration(lasts)}`,
  'strip-laid': ({ head, tape }, item, display) =>
    `${head} head lays ${tapeLength(tape, display)} of tape on ${item}`,
  'passes-unsealed': ({ head }, item) => `${head} head is out of tape and lets ${item} pass`,
  'tape-breaks': ({ head }, item) => `${head} head's tape breaks at ${item}`,
  jams: ({ jam }, item) => `${item} jams${ofJam(jam)}`,
  freed: (_, item) => `${item} is freed`,
  spoilt: (_, item) => `${item} is spoilt and taken out`,
  'strip-spoilt': ({ head }, item) => `${item} stands under the ${head} head: its strip is spoilt`,
  rejected: (_, item) => `rejects ${item}`,
  leaves: ({ as, after }, item) =>
    `${item} leaves the line${as === 'good' ? '' : `, ${as}`}, ${duration(after)} after it arrived`,
  // a colon has one meaning here
  state: ({ state }) => `state: ${stateLabel(state!, ', ')}`,
  stops: ({ cause, jam }) => `stops: ${causes[cause!].one}${ofJam(jam)}`,
  'sensor-stops': ({ sensor, sees }) =>
    `stops: the sensor on ${sensor} sees ${sees === 'full' ? 'a case' : 'no case'}`,
  'sensor-starts': () => 'runs again: the sensor lets it',
  'runs-at': ({ speed }, _, display) => `its speed is now ${driveSpeed(speed, display)}`,
  'carries-at': ({ speed }, _, display) => `what lies on it goes at ${driveSpeed(speed, display)}`,
  'slow-start-begins': () => 'starts slowly',
  'slow-start-ends': () => 'its slow start is over',
  'sets-out': ({ person, task }) => `${person} sets out: ${task}`,
  'work-begins': ({ person, task, lasts }) =>
    `${person} is there and begins, for ${duration(lasts)}: ${task}`,
  'work-done': ({ person, task }) => `${person} is done: ${task}`,
  'planned-work': ({ person, task, lasts }) =>
    person === undefined
      ? `planned work begins, for ${duration(lasts)}: ${task}`
      : `${person} is there and begins, for ${duration(lasts)}: ${task}`,
  'planned-work-done': ({ person, task }) =>
    person === undefined ? `planned work is done: ${task}` : `${person} is done: ${task}`,
  'other-work-due': ({ task, lasts }) => `other work is due, ${duration(lasts)} of it: ${task}`,
  'other-work-begins': ({ person, task, lasts }) =>
    `${person} begins with other work, for ${duration(lasts)}: ${task}`,
  'other-work-left': ({ person, task, lasts }) =>
    `${person} leaves other work, ${duration(lasts)} of it to do: ${task}`,
  'other-work-done': ({ person, task }) => `${person} is done with other work: ${task}`,
  'roll-changed': ({ head }) => `${head} head has a new roll`,
  'blade-serviced': ({ head }) => `${head} head has its blade serviced`,
  'post-manned': ({ person }) => `somebody of ${person} stands at the post`,
  'post-left': ({ person }) => `nobody of ${person} stands at the post`,
  'break-begins': () => 'a break begins',
  'break-ends': () => 'the break ends',
  'handover-begins': () => 'handover of the shift: nobody works here',
  'handover-ends': () => 'the handover is over',
  'start-up-ends': () => 'the line is started up',
  'arrivals-end': () => 'arrivals end',
}
