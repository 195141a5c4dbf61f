/** Rules of sensors that stop and start pieces: what they look at, where they stand, and that what stands for one can run again. */
import type { KeysOf } from '../kinds/keys.js'
import type { Report } from './finding.js'
import { nearest } from './nearest.js'
import { longestCase } from './outside.js'
import { millimetres } from './piece-rules.js'
import { arrivalWays, exitName, lineWays, reachedFrom, startsOf, targetsOf } from './routes.js'
import type { Scenario } from './schema.js'
import { farthestBehind, placeOf } from './sensor-place.js'
import { type SensedKeys, type SensorKeys, seenBy } from './sensors.js'
import { countOf } from './side-by-side.js'
import type { Path } from './walk.js'

const showings = ['stops-when', 'starts-when'] as const

const sensedOf = (piece: KeysOf): SensedKeys => ('stops-when' in piece ? piece : {})

/** Breaches of the rules on sensors, of all pieces. */
export function checkSensors(scenario: Scenario, report: Report): void {
  let isSound = true
  const strictly: Report = (...finding) => {
    isSound = false
    report(...finding)
  }
  for (const [name, piece] of Object.entries(scenario.line)) checkPiece(scenario, name, piece, strictly)
  if (isSound) checkLocks(scenario, report)
}

function checkPiece(scenario: Scenario, name: string, piece: KeysOf, report: Report): void {
  const path = ['line', name]
  const { restart, ...keys } = piece as SensedKeys
  if (keys['stops-when'] === undefined) {
    const alone = keys['starts-when'] !== undefined ? 'starts-when' : restart !== undefined ? 'restart' : null
    if (alone !== null)
      report(
        [...path, alone],
        'missing-key',
        'nothing stops this piece, so it cannot start again',
        'add `stops-when`, such as `{full: outfeed, for: 3 s}`, or remove it',
        true,
      )
    return
  }
  if (piece.type === 'conveyor' && piece.carries === 'gravity')
    report(
      [...path, 'stops-when'],
      'conflict',
      'a gravity conveyor has no drive to stop',
      'remove it, or make it `accumulating`',
      true,
    )
  for (const key of showings) {
    const sensor = keys[key]
    if (sensor !== undefined) checkSensor(scenario, name, sensor, [...path, key], report)
  }
}

function checkSensor(scenario: Scenario, name: string, sensor: SensorKeys, path: Path, report: Report): void {
  const { full, clear } = sensor
  if ((full === undefined) === (clear === undefined)) {
    report(
      path,
      'one-of',
      'a sensor needs either `full` (it sees a case) or `clear` (it sees none)',
      'keep or add one, such as `full: outfeed`',
      true,
    )
    return
  }
  const { line } = scenario
  const watched = seenBy(sensor)
  const at = [...path, full === undefined ? 'clear' : 'full']
  const piece = Object.hasOwn(line, watched) ? line[watched]! : null
  const conveyors = Object.keys(line).filter((each) => line[each]!.type === 'conveyor' && each !== name)
  if (piece?.type !== 'conveyor' || watched === name)
    report(
      at,
      'no-such-path',
      watched === name
        ? 'the sensor is on the piece that it stops, where then nothing moves'
        : `\`${watched}\` is not a conveyor of the line`,
      conveyors.length > 0 ? nearest(watched, conveyors) : 'use another conveyor',
    )
  else if (countOf(piece) > 1)
    report(
      at,
      'conflict',
      `there are ${countOf(piece)} of \`${watched}\` side by side, but a sensor looks at only one`,
      'look at a conveyor before or after them',
    )
  else checkPlace(scenario, name, sensor, piece.length, path, report)
}

/** Driven belts hold the case that they have half passed on: a sensor that this case covers stays covered. */
function checkPlace(
  scenario: Scenario,
  name: string,
  sensor: SensorKeys,
  length: number,
  path: Path,
  report: Report,
): void {
  const watched = seenBy(sensor)
  const at = [...path, 'at']
  if (placeOf(sensor, scenario) > length)
    report(
      at,
      'out-of-range',
      `the sensor is before the entrance of \`${watched}\``,
      `at most ${millimetres(length)}`,
    )
  const feeds = targetsOf(lineWays(scenario), name).includes(watched)
  if (scenario.line[name]!.type !== 'sealer' || !feeds) return
  const farthest = farthestBehind(watched, scenario)
  if (placeOf(sensor, scenario) > farthest + 1e-9)
    report(
      at,
      'conflict',
      `the belts of \`${name}\` stop a case while its tail is on them, so \`${longestCase(scenario)?.name}\` would cover this place for ever`,
      `at most ${millimetres(farthest)}: one length of the longest case after the entrance`,
    )
}

/** What must come about while a piece stands: that a conveyor shows a case, or none, at a place. */
interface Awaited {
  key: (typeof showings)[number]
  watched: string
  awaitsCase: boolean
  place: number
}

function awaitedBy(scenario: Scenario, keys: SensedKeys): Awaited[] {
  const stops = keys['stops-when']
  if (stops === undefined) return []
  const of = (key: Awaited['key'], sensor: SensorKeys, awaitsCase: boolean): Awaited => ({
    ...{ key, awaitsCase, watched: seenBy(sensor) },
    place: placeOf(sensor, scenario),
  })
  const starts = keys['starts-when']
  return [
    of('stops-when', stops, stops.clear !== undefined),
    ...(starts === undefined ? [] : [of('starts-when', starts, starts.full !== undefined)]),
  ]
}

/** Pieces that wait for one another by their sensors. */
function checkLocks(scenario: Scenario, report: Report): void {
  const { line } = scenario
  const sensed = Object.keys(line).filter((name) => sensedOf(line[name]!)['stops-when'] !== undefined)
  if (sensed.length === 0) return
  const mustRun = new MustRun(scenario)
  const awaits = (name: string) => awaitedBy(scenario, sensedOf(line[name]!))
  const told = new Set<string>()
  for (const name of sensed)
    for (const awaited of awaits(name)) {
      const path = ['line', name, awaited.key]
      if (mustRun.has(name, awaited)) {
        report(path, 'conflict', ...lockedAlone(name, awaited), true)
        continue
      }
      for (const other of sensed) {
        const back = awaits(other).find((each) => mustRun.has(name, each) && !comesBefore(each, awaited))
        const key = [name, other].sort().join('\n')
        if (other === name || !mustRun.has(other, awaited) || !back || told.has(key)) continue
        told.add(key)
        report(
          path,
          'conflict',
          `\`${name}\` and \`${other}\` could wait for each other for ever: each is stopped until the other has moved cases on ${[...new Set([awaited.watched, back.watched])].map((each) => `\`${each}\``).join(' and ')}`,
          `remove \`${back.key}\` of \`${other}\`, or start one of them by a sensor that the other cannot block`,
          true,
        )
      }
    }
}

/** Of two on one conveyor the sensor that starts is covered before the one that stops, for the queue comes to it first. */
function comesBefore(one: Awaited, other: Awaited): boolean {
  if (one.watched !== other.watched || one.awaitsCase === other.awaitsCase) return false
  const [fills, empties] = one.awaitsCase ? [one, other] : [other, one]
  return fills.place <= empties.place
}

/** What is said of a piece that nothing but itself could start again: the rule, and the nearest mend. */
const lockedAlone = (name: string, { watched, awaitsCase }: Awaited): [rule: string, fix: string] =>
  awaitsCase
    ? [
        `\`${name}\` would be stopped for ever: it waits for cases on \`${watched}\`, but they all come through \`${name}\``,
        `use \`full: ${watched}\` to stop and \`clear: ${watched}\` to start, or a conveyor before this piece`,
      ]
    : [
        `\`${name}\` would be stopped for ever: it waits until \`${watched}\` is clear, but all its cases leave through \`${name}\``,
        `use \`clear: ${watched}\` to stop and \`full: ${watched}\` to start, or a conveyor after this piece`,
      ]

/** Which pieces must run for a conveyor to come to show a case, or none: those that all cases to it, or from it, go through. */
class MustRun {
  private readonly ways: ReturnType<typeof lineWays>
  private readonly starts: string[]

  constructor(scenario: Scenario) {
    this.ways = lineWays(scenario)
    this.starts = startsOf(arrivalWays(scenario))
  }

  has(name: string, { watched, awaitsCase }: Awaited): boolean {
    if (name === watched) return true
    const from = awaitsCase ? this.starts : [watched]
    const without = reachedFrom(
      from.filter((each) => each !== name),
      (each) => targetsOf(this.ways, each).filter((target) => target !== name),
    )
    return !without.has(awaitsCase ? watched : exitName)
  }
}
