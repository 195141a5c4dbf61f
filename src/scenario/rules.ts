/** Rules between keys: what each key allows by itself, but not together. Findings here stop a run. */

import { casesPerRoll, drawnLength } from '../trade/tape.js'
import { wholeZones, zonesFor } from '../trade/zones.js'
import { checkSource } from './arrival-rules.js'
import { checkBreaks, checkDuties } from './crew-rules.js'
import type { Finding } from './issues.js'
import { type Distribution, meanOf } from './law.js'
import { exampleApart } from './meant.js'
import { nearest } from './nearest.js'
import { outsideSize } from './outside.js'
import { checkRoutes } from './routes.js'
import { type EquipmentKeys, equipmentTypes, type Scenario, type Skill } from './schema.js'
import type { Path } from './walk.js'

/** A belt may run this much above a head's rating: 80 ft/min is commonly written as 24.4 m/min. */
const ratingTolerance = 1.001

/** Breakdowns that come faster than this on the mean are a slip of the unit, and a study of them would not end, s. */
const shortestMean = 1

/** A campaign is one observation, and a study has many of them, s. */
const longestCampaign = 31_622_400

const millimetres = (metres: number) => `${Math.round(metres * 1000)} mm`
const perMinute = (speed: number) => `${(speed * 60).toPrecision(4)} m/min`

/** Every breach of a rule between keys, none stopping the others. */
export function ruleFindings(scenario: Scenario): Finding[] {
  const findings: Finding[] = []
  const report = (path: Path, code: Finding['code'], rule: string, fix: string, atKey = false) =>
    findings.push({ code, path, found: '', rule, fix, atKey })

  checkCases(scenario, report)
  checkArrivals(scenario, report)
  const longest = longestCase(scenario)
  for (const [name, piece] of Object.entries(scenario.line)) {
    checkDistributions(piece, ['line', name], report)
    if (piece.type === 'conveyor') checkConveyor(['line', name], piece, longest, report)
    if (piece.type === 'sealer') checkSealer(scenario, name, piece, longest, report)
    for (const [key, skill] of tasksOf(piece)) checkSkill(scenario, ['line', name, key], skill, report)
  }
  checkRoutes(scenario, report)
  checkShift(scenario, report)
  checkDuties(scenario, report)
  checkMoney(scenario, report)
  checkClosure(scenario, report)
  return findings
}

/** Notes one breach: where, which code, the rule and the nearest mend. */
export type Report = (path: Path, code: Finding['code'], rule: string, fix: string, atKey?: boolean) => void

function checkCases(scenario: Scenario, report: Report): void {
  const kinds = Object.entries(scenario.cases)
  if (kinds.length === 0)
    report(
      ['cases'],
      'missing-key',
      'at least one case is needed',
      'name a case with its length, width and height',
      true,
    )
  else if (kinds.every(([, kind]) => kind.share === 0))
    report(['cases'], 'conflict', 'the mix is empty: every share is 0', 'give one case a share above 0', true)
  for (const [name, kind] of kinds) {
    const outside = [kind.length, kind.width, kind.height]
    const isWhole = outside.every((side) => side !== undefined)
    const isNone = outside.every((side) => side === undefined)
    if (kind.inside ? !isNone : !isWhole)
      report(
        ['cases', name],
        'one-of',
        'a case has length, width and height outside, or `inside` with `flute`',
        'give the one or the other',
        true,
      )
    if (kind.inside && !kind.flute)
      report(
        ['cases', name],
        'missing-key',
        '`inside` needs `flute`: the board makes the difference',
        'add `flute`, such as `flute: C`',
        true,
      )
  }
}

function checkArrivals(scenario: Scenario, report: Report): void {
  const sources = Object.entries(scenario.arrivals)
  if (sources.length === 0)
    report(
      ['arrivals'],
      'missing-key',
      'at least one source of cases is needed',
      'name a source with `time-between`, `rate`, `by-hour`, `orders` or `log`',
      true,
    )
  if (Object.keys(scenario.line).length === 0)
    report(
      ['line'],
      'missing-key',
      'at least one piece of equipment is needed',
      `name a ${equipmentTypes.join(', a ')}`,
      true,
    )
  for (const [name, source] of sources) {
    checkSource(scenario, name, source, report)
  }
}

function checkDistributions(piece: Scenario['line'][string], path: Path, report: Report): void {
  const positive = (distribution: Distribution | undefined, key: Path) => {
    if (distribution && meanOf(distribution) < shortestMean)
      report(
        [...path, ...key],
        'out-of-range',
        `the mean must be at least ${shortestMean} s`,
        'such as `40 h`',
      )
  }
  positive(piece.breakdowns?.after, ['breakdowns', 'after'])
}

function longestCase(scenario: Scenario): { name: string; length: number } | null {
  return Object.entries(scenario.cases)
    .flatMap(([name, kind]) =>
      (kind.inside ? kind.flute !== undefined : kind.length !== undefined)
        ? [{ name, length: outsideSize(kind).length }]
        : [],
    )
    .reduce<{ name: string; length: number } | null>(
      (most, each) => (most && most.length >= each.length ? most : each),
      null,
    )
}

function checkConveyor(
  path: Path,
  { length, zone, carries, breakdowns }: EquipmentKeys<'conveyor'>,
  longest: ReturnType<typeof longestCase>,
  report: Report,
): void {
  if (longest && longest.length > length)
    report(
      [...path, 'length'],
      'conflict',
      `the case \`${longest.name}\` (${millimetres(longest.length)}) is longer than this conveyor`,
      `at least ${millimetres(longest.length)}`,
    )
  else if (zone !== undefined && longest && zonesFor(longest.length, zone) > wholeZones(length, zone))
    report(
      [...path, 'zone'],
      'conflict',
      `the case \`${longest.name}\` takes ${zonesFor(longest.length, zone)} zones, and ${wholeZones(length, zone)} fit on this conveyor`,
      `a length of at least ${millimetres(zonesFor(longest.length, zone) * zone)}, or other zones`,
    )
  if (zone !== undefined && carries !== 'accumulating')
    report(
      [...path, 'zone'],
      'conflict',
      'only an accumulating conveyor has zones',
      'take it out, or write `carries: accumulating`',
      true,
    )
  if (breakdowns && carries === 'gravity')
    report(
      [...path, 'breakdowns'],
      'conflict',
      'a gravity conveyor has no drive that could fail',
      'take it out',
      true,
    )
}

function checkSealer(
  scenario: Scenario,
  name: string,
  sealer: EquipmentKeys<'sealer'>,
  longest: ReturnType<typeof longestCase>,
  report: Report,
): void {
  const path = ['line', name]
  if (longest && longest.length > sealer.bed)
    report(
      [...path, 'bed'],
      'conflict',
      `the case \`${longest.name}\` (${millimetres(longest.length)}) is longer than the driven belts`,
      `at least ${millimetres(longest.length)}`,
    )
  const heads = Object.entries(sealer.heads).flatMap(([which, head]) =>
    head ? [[which, head] as const] : [],
  )
  const [slowest, { 'rated-speed': rating }] = heads.reduce((slow, each) =>
    each[1]['rated-speed'] < slow[1]['rated-speed'] ? each : slow,
  )
  if (sealer['belt-speed'] > rating * ratingTolerance)
    report(
      [...path, 'belt-speed'],
      'conflict',
      `faster than the ${slowest} head is rated for: ${perMinute(rating)}`,
      `at most ${perMinute(rating)}, or a head with a higher rating`,
    )
  for (const [which, head] of heads) {
    const at = [...path, 'heads', which]
    if (head.position > sealer.bed)
      report(
        [...at, 'position'],
        'conflict',
        `the head stands beyond the driven belts (${millimetres(sealer.bed)})`,
        `at most ${millimetres(sealer.bed)}`,
      )
    const [narrowest, widest] = head.takes
    if (scenario.tape.width < narrowest || scenario.tape.width > widest)
      report(
        [...at, 'takes'],
        'conflict',
        `the tape of ${millimetres(scenario.tape.width)} does not fit this head: ${millimetres(narrowest)} to ${millimetres(widest)}`,
        'another tape width, or a head that takes it',
      )
  }
  const usable = scenario.tape.roll - scenario.tape['lost-per-roll']
  if (
    longest &&
    casesPerRoll(usable, drawnLength(longest.length, scenario.tape.leg, scenario.tape.stretch)) < 1
  )
    report(
      ['tape', 'roll'],
      'conflict',
      `a roll does not close one case \`${longest.name}\``,
      'a longer roll or less lost per roll',
    )
}

/** The keys of a piece that call for people, each with the skill that it calls for. */
function tasksOf(piece: Scenario['line'][string]): [string, Skill][] {
  const tasks: [string, Skill][] = piece.breakdowns ? [['breakdowns', 'breakdowns']] : []
  if (piece.type !== 'sealer') return tasks
  tasks.push(['roll-change', 'roll-change'])
  if (piece.jams) tasks.push(['jams', 'jams'])
  if (piece.blade) tasks.push(['blade', 'blade'])
  if (piece['size-setting'].by === 'crew') tasks.push(['size-setting', 'size-setting'])
  return tasks
}

function checkSkill(scenario: Scenario, path: Path, skill: Skill, report: Report): void {
  const crews = Object.entries(scenario.crew)
  if (crews.some(([, crew]) => crew.does.includes(skill))) return
  const fix =
    crews.length > 0
      ? `add \`${skill}\` to \`crew.${crews[0]![0]}.does\``
      : `add a crew that does \`${skill}\``
  report(
    path,
    'conflict',
    `nobody does \`${skill}\`: the line would stand until the end of the shift`,
    fix,
    true,
  )
}

function checkShift(scenario: Scenario, report: Report): void {
  const { shift } = scenario
  checkBreaks(shift.breaks, shift.length, ['shift', 'breaks'], report)
  if (shift['start-up'] >= shift.length)
    report(['shift', 'start-up'], 'conflict', 'the start-up takes the whole shift', 'a shorter start-up')
  if (shift['start-up'] > 0 && shift.breaks.some((pause) => pause.at < shift['start-up']))
    report(
      ['shift', 'breaks'],
      'conflict',
      'a break begins before the line is started up',
      'breaks after the start-up',
      true,
    )
  if (shift.campaign > 1 && shift.start === 'empty')
    report(
      ['shift', 'campaign'],
      'conflict',
      'shifts in a row need `start: carry-over` or `start: steady`',
      'set `start: carry-over`',
    )
  if (shift.start === 'steady' && shift.campaign === 1 && shift['run-out'] > 0)
    report(
      ['shift', 'run-out'],
      'conflict',
      'a line that runs without end (`start: steady`) has no run-out',
      'set `run-out: 0 min`, or a campaign of shifts that each run out',
      true,
    )
  if (shift.campaign * (shift.length + shift['run-out']) > longestCampaign)
    report(
      ['shift', 'campaign'],
      'out-of-range',
      'a campaign is at most a year long',
      'fewer shifts in a row',
    )
}

function checkMoney(scenario: Scenario, report: Report): void {
  const { money, tape } = scenario
  if (!money) return
  const own = (value: { currency: string } | undefined, path: Path) => {
    if (value && value.currency !== money.currency)
      report(path, 'conflict', `one currency for all: ${money.currency}`, `an amount in ${money.currency}`)
  }
  own(money.labour, ['money', 'labour'])
  own(money.downtime, ['money', 'downtime'])
  own(tape.price, ['tape', 'price'])
  for (const [name, kind] of Object.entries(scenario.cases))
    own(kind['contents-value'], ['cases', name, 'contents-value'])
  own(money.energy, ['money', 'energy'])
  own(scenario.closure?.reopens?.cost, ['closure', 'reopens', 'cost'])
  for (const [path, price] of Object.entries(money.capital ?? {})) {
    own(price, ['money', 'capital', path])
    const piece = scenario.line[path.slice('line.'.length)]
    if (price.per === 'm' && piece && piece.type !== 'conveyor')
      report(
        ['money', 'capital', path],
        'conflict',
        'only conveyors are bought by the metre',
        `its whole price, such as \`${exampleApart(`24000 ${money.currency}`, String(price.amount))}\``,
      )
  }
  checkPieces(scenario, 'capital', report)
  checkPieces(scenario, 'power', report)
}

/** What is told of pieces is told by their paths. */
function checkPieces({ money, line }: Scenario, key: 'capital' | 'power', report: Report): void {
  for (const path of Object.keys(money?.[key] ?? {})) {
    const named = path.startsWith('line.') && Object.hasOwn(line, path.slice(5))
    if (!named)
      report(
        ['money', key, path],
        'no-such-path',
        `\`${path}\` is no piece of the line`,
        nearest(
          path,
          Object.keys(line).map((each) => `line.${each}`),
        ),
        true,
      )
  }
}

/** A load compares with one on the reference: a share of it, or both as forces. */
function checkClosure({ closure }: Scenario, report: Report): void {
  if (!closure?.load) return
  const { load, reference } = closure
  if (!reference)
    report(
      ['closure', 'load'],
      'missing-key',
      'a load is only compared with that on a closure that is known to hold',
      'add `reference` with its width, leg and load',
    )
  else if ('newtons' in load && reference.load === undefined)
    report(
      ['closure', 'reference'],
      'missing-key',
      'the load is a force, and the reference has none to compare it with',
      `give \`load\` in the reference, or this load as a share of it, such as \`${exampleApart('120 %', String(load.newtons))}\``,
      true,
    )
}
