/** Rules between keys: what each key allows by itself, but not together. Findings here stop a run. */
import { type KeysOf, kindKeys } from '../kinds/keys.js'
import { rulesOf } from '../kinds/rules.js'
import { has } from '../kinds/traits.js'
import { checkSource } from './arrival-rules.js'
import type { Skill } from './calls.js'
import { checkBreaks, checkDuties } from './crew-rules.js'
import { checkSlowStart, checkSpeeds } from './drive-rules.js'
import type { Finding, Report } from './finding.js'
import { checkJams } from './jam-rules.js'
import { meanOf } from './law.js'
import { checkClosure, checkMoney } from './money-rules.js'
import { longestCase, varies } from './outside.js'
import { checkHours, checkPlanned } from './planned-rules.js'
import { checkRoutes, reachOf } from './routes.js'
import type { Scenario } from './schema.js'
import { checkSensors } from './sensor-rules.js'
import { checkSideBySide } from './side-by-side.js'
import type { Path } from './walk.js'

/** Breakdowns that come faster than this on the mean are a slip of the unit, and a study of them would not end, s. */
const shortestMean = 1

/** A campaign is one observation, and a study has many of them, s. */
const longestCampaign = 31_622_400

/** Every breach of a rule between keys, none stopping the others. */
export function ruleFindings(scenario: Scenario): Finding[] {
  const findings: Finding[] = []
  const report = (path: Path, code: Finding['code'], rule: string, fix: string, atKey = false) =>
    findings.push({ code, path, found: '', rule, fix, atKey })

  checkCases(scenario, report)
  checkArrivals(scenario, report)
  const longest = longestCase(scenario)
  for (const [name, piece] of Object.entries(scenario.line)) {
    const path = ['line', name]
    checkBreakdowns(piece, path, report)
    const rules = rulesOf(piece)
    rules.check?.(piece, { scenario, path, longest }, report)
    if (piece.breakdowns) checkSkill(scenario, [...path, 'breakdowns'], 'breakdowns', report)
    checkPlanned(scenario, piece, path, report)
    checkHours(scenario, piece, path, report)
    checkSpeeds(scenario, piece, path, report)
    checkSlowStart(scenario, piece, path, report)
    if (piece.jams && checkJams(piece.jams, scenario, [...path, 'jams'], report))
      checkSkill(scenario, [...path, 'jams'], 'jams', report)
    for (const skill of rules.skills?.(piece) ?? []) checkSkill(scenario, [...path, skill], skill, report)
  }
  checkRoutes(scenario, report)
  checkSensors(scenario, report)
  checkSideBySide(scenario, report)
  checkSizes(scenario, report)
  checkShift(scenario, report)
  checkDuties(scenario, report)
  checkMoney(scenario, report)
  checkClosure(scenario, report)
  return findings
}

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
    report(
      ['cases'],
      'conflict',
      'the mix is empty: every share is 0',
      'give at least one case a share above 0',
      true,
    )
  for (const [name, kind] of kinds) {
    const outside = [kind.length, kind.width, kind.height]
    const isWhole = outside.every((side) => side !== undefined)
    const isNone = outside.every((side) => side === undefined)
    const tell = (code: Finding['code'], rule: string, fix: string) =>
      report(['cases', name], code, rule, fix, true)
    if (kind.inside ? !isNone : !isWhole)
      tell(
        'one-of',
        'a case needs outside length, width and height, or `inside` with `flute`',
        'give one of the two',
      )
    if (kind.inside && !kind.flute)
      tell(
        'missing-key',
        '`inside` needs `flute`: the board thickness is the difference to the outside',
        'add `flute`, such as `flute: C`',
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
      `name a ${Object.keys(kindKeys).join(', a ')}`,
      true,
    )
  for (const [name, source] of sources) checkSource(scenario, name, source, report)
}

function checkBreakdowns({ breakdowns }: KeysOf, path: Path, report: Report): void {
  if (breakdowns && meanOf(breakdowns.after) < shortestMean)
    report(
      [...path, 'breakdowns', 'after'],
      'out-of-range',
      `the mean must be at least ${shortestMean} s`,
      'such as `40 h`',
    )
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

/** A machine that people set for a size cannot be set for every case: where height or width vary, it must set itself. */
function checkSizes(scenario: Scenario, report: Report): void {
  const varying = Object.entries(scenario.cases).filter(([, kind]) => varies(kind, ['height', 'width']))
  if (varying.length === 0) return
  const reach = reachOf(scenario)
  for (const [kind] of varying) {
    const reached = reach(kind)
    for (const [name, piece] of Object.entries(scenario.line))
      if (reached.has(name) && has(piece, 'tapes') && piece['size-setting'].by === 'crew')
        report(
          ['line', name, 'size-setting', 'by'],
          'conflict',
          `the case \`${kind}\` varies in height or width, but a machine set by people would need a changeover for each of them`,
          '`machine`, which sets itself; or one height and one width for this case',
        )
  }
}

function checkShift(scenario: Scenario, report: Report): void {
  const { shift } = scenario
  const conflict = (key: keyof typeof shift, rule: string, fix: string, atKey = false) =>
    report(['shift', key], 'conflict', rule, fix, atKey)
  checkBreaks(shift.breaks, shift.length, ['shift', 'breaks'], report)
  if (shift['start-up'] >= shift.length)
    conflict('start-up', 'the start-up takes the whole shift', 'use a shorter start-up')
  if (shift['start-up'] > 0 && shift.breaks.some((pause) => pause.at < shift['start-up']))
    conflict(
      'breaks',
      'a break begins before the end of the start-up',
      'put the breaks after the start-up',
      true,
    )
  if (shift.campaign > 1 && shift.start === 'empty')
    conflict(
      'campaign',
      'shifts in a row need `start: carry-over` or `start: steady`',
      'set `start: carry-over`',
    )
  if (shift.start === 'steady' && shift.campaign === 1 && shift['run-out'] > 0)
    conflict(
      'run-out',
      'a line that runs without end (`start: steady`) has no run-out',
      'set `run-out: 0 min`, or use another `start`',
      true,
    )
  if (shift.campaign * (shift.length + shift['run-out']) > longestCampaign)
    report(
      ['shift', 'campaign'],
      'out-of-range',
      'a campaign must be at most a year long',
      'use fewer shifts in a row',
    )
}
