/** Rules between keys: what each key allows by itself, but not together. Findings here stop a run. */
import { type KeysOf, kindKeys } from '../kinds/keys.js'
import { rulesOf } from '../kinds/rules.js'
import { checkSource } from './arrival-rules.js'
import type { Skill } from './calls.js'
import { checkBreaks, checkDuties } from './crew-rules.js'
import { checkSlowStart, checkSpeeds } from './drive-rules.js'
import type { Finding, Report } from './finding.js'
import { checkJams } from './jam-rules.js'
import { type Distribution, meanOf } from './law.js'
import { checkClosure, checkMoney } from './money-rules.js'
import { longestCase } from './outside.js'
import { checkHours, checkPlanned } from './planned-rules.js'
import { checkRoutes } from './routes.js'
import type { Scenario } from './schema.js'
import { checkSensors } from './sensor-rules.js'
import { checkSideBySide } from './side-by-side.js'
import { checkSizes } from './size-rules.js'
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
    checkDistributions(piece, ['line', name], report)
    const rules = rulesOf(piece)
    rules.check?.(piece, { scenario, path: ['line', name], longest }, report)
    if (piece.breakdowns) checkSkill(scenario, ['line', name, 'breakdowns'], 'breakdowns', report)
    checkPlanned(scenario, piece, ['line', name], report)
    checkHours(scenario, piece, ['line', name], report)
    checkSpeeds(scenario, piece, ['line', name], report)
    checkSlowStart(scenario, piece, ['line', name], report)
    if (piece.jams && checkJams(piece.jams, scenario, ['line', name, 'jams'], report))
      checkSkill(scenario, ['line', name, 'jams'], 'jams', report)
    for (const skill of rules.skills?.(piece) ?? [])
      checkSkill(scenario, ['line', name, skill], skill, report)
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
    if (kind.inside ? !isNone : !isWhole)
      report(
        ['cases', name],
        'one-of',
        'a case needs outside length, width and height, or `inside` with `flute`',
        'give one of the two',
        true,
      )
    if (kind.inside && !kind.flute)
      report(
        ['cases', name],
        'missing-key',
        '`inside` needs `flute`: the board thickness is the difference to the outside',
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
      `name a ${Object.keys(kindKeys).join(', a ')}`,
      true,
    )
  for (const [name, source] of sources) {
    checkSource(scenario, name, source, report)
  }
}

function checkDistributions(piece: KeysOf, path: Path, report: Report): void {
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
    report(['shift', 'start-up'], 'conflict', 'the start-up takes the whole shift', 'use a shorter start-up')
  if (shift['start-up'] > 0 && shift.breaks.some((pause) => pause.at < shift['start-up']))
    report(
      ['shift', 'breaks'],
      'conflict',
      'a break begins before the end of the start-up',
      'put the breaks after the start-up',
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
