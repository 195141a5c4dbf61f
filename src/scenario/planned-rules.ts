/** Rules of planned work, and of the hours and the handover of places that people work. */
import type { KeysOf } from '../kinds/keys.js'
import { shortestWork } from './crew-rules.js'
import type { Report } from './finding.js'
import { meanOf } from './law.js'
import { nearest } from './nearest.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

/** Breaches of the rules on planned work at a piece. */
export function checkPlanned(
  { shift, crew }: Scenario,
  { planned = [] }: KeysOf,
  path: Path,
  report: Report,
): void {
  const crews = Object.keys(crew)
  const isLate = (time: number | undefined) => time !== undefined && time >= shift.length
  const earlier = `use a time before ${hours(shift.length)}, the end of the shift`
  for (const [index, { at, every, takes, needs }] of planned.entries()) {
    const place = [...path, 'planned', index]
    if ((at === undefined) === (every === undefined))
      report(
        place,
        'one-of',
        'planned work needs either `at` (once) or `every` (repeated)',
        'keep or add one, such as `at: 4 h` or `every: 2 h`',
        true,
      )
    if (isLate(at)) report([...place, 'at'], 'out-of-range', 'is after the end of the shift', earlier)
    if (isLate(every))
      report(
        [...place, 'every'],
        'out-of-range',
        'is longer than a shift, so the work is never done',
        earlier,
      )
    if (meanOf(takes) < shortestWork)
      report(
        [...place, 'takes'],
        'out-of-range',
        `the mean must be at least ${shortestWork} s`,
        'such as `10 min`',
      )
    else if (every !== undefined && meanOf(takes) >= every)
      report(
        [...place, 'takes'],
        'conflict',
        'takes as long as the interval until it is due again: the piece would never run',
        'use a shorter `takes` or a longer `every`',
      )
    if (needs !== undefined && !crews.includes(needs))
      report([...place, 'needs'], 'no-such-path', `there is no crew \`${needs}\``, nearest(needs, crews))
  }
}

/** Breaches of the rules on the hours of people at a station. */
export function checkHours(scenario: Scenario, piece: KeysOf, path: Path, report: Report): void {
  if (piece.type !== 'station') return
  for (const key of ['by-hour', 'handover'] as const)
    if (piece[key] !== undefined && piece['run-by'] !== 'people')
      report(
        [...path, key],
        'conflict',
        'is only for places run by people, but this one is run by a machine',
        'set `run-by: people`, or remove it',
      )
  const { handover } = piece
  if (handover === undefined) return
  const { shift } = scenario
  const end = shift.length + shift['run-out']
  const conflict = (rule: string, fix: string) => report([...path, 'handover'], 'conflict', rule, fix)
  if (2 * handover >= end)
    conflict('the two handovers together take the whole shift', 'use a shorter handover')
  else if (shift.breaks.some((pause) => pause.at <= handover || pause.at + pause.for >= end - handover))
    conflict(
      'a break of the shift overlaps or touches a handover',
      'use a shorter handover, or move the break',
    )
}

const hours = (seconds: number): string => `${Number((seconds / 3600).toPrecision(4))} h`
