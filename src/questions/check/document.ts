/** The result document of `command: check`: findings, the hand calculation and what was assumed; SI, in a fixed order. */

import type { Amount } from '../../answers/amount.js'
import { wordsFor } from '../../catalogue/printed-units.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { Checked } from '../../hand/check.js'
import type { ClosureComparison } from '../../hand/closing.js'
import { expectedResult } from '../../hand/expected-result.js'
import { type FindingCode, type Severity, severities } from '../../hand/finding.js'
import { certificateOf, wallOf } from '../../hand/findings/case.js'
import { foretoldRows } from '../../hand/foretold.js'
import type { HandCalculation } from '../../hand/hand.js'
import { arrivingShares, toSpare } from '../../hand/line.js'
import type { GivenAt, Loaded } from '../../scenario/load.js'
import { outsideSize } from '../../scenario/outside.js'
import type { Problem } from '../../scenario/problems.js'
import type { Scenario } from '../../scenario/schema.js'
import { limitsOf } from '../../trade/board.js'
import type { Unreliable } from '../../trade/buffer.js'
import { unitedSize } from '../../trade/case.js'
import { cautions } from '../../trade/cautions.js'
import { closureProof } from '../../trade/closure.js'

/** A finding as it stands in the document. */
export interface FindingResult {
  code: FindingCode | Problem['code']
  severity: Severity
  path: string
  place: Omit<GivenAt, 'window'> | null
  message: string
  basis: string
  fix: string
}

/** What made the document. */
export interface CheckMade {
  version: string
  node: string
  scenario: { title: string; sha256: string }
  repeat: string
}

export interface CheckResult {
  format: 'tapeshift-result/1'
  command: 'check'
  /** Null where the scenario could not be read. */
  made: CheckMade | null
  display: 'metric' | 'us'
  canWork: boolean
  counts: Record<Severity, number>
  findings: FindingResult[]
  cases: Record<string, ReturnType<typeof caseResult>>
  hand: ReturnType<typeof handResult> | null
  closure: ReturnType<typeof closureResult> | null
  assumed: Loaded['assumed']
  cautions: readonly string[]
}

const amount = (value: number | null, unit: string): Amount => ({
  value: value !== null && Number.isFinite(value) ? value : null,
  unit,
})

/** Makes the document of a scenario that was read. */
export function checkResult(
  loaded: Pick<Loaded, 'scenario' | 'assumed'>,
  checked: Checked,
  made: CheckMade,
): CheckResult {
  const { scenario, assumed } = loaded
  const findings = checked.findings.map(
    ({ code, severity, path, place, message, basis, fix }): FindingResult => ({
      code,
      severity,
      path,
      place: place && { source: place.source, line: place.line, column: place.column },
      message,
      basis,
      fix,
    }),
  )
  const mix = arrivingShares(scenario, checked.hand.line)
  return {
    format: 'tapeshift-result/1',
    command: 'check',
    made,
    display: scenario.display,
    canWork: checked.canWork,
    counts: countsOf(findings),
    findings,
    cases: Object.fromEntries(
      Object.entries(scenario.cases).map(([name, kind], index) => [name, caseResult(kind, mix[index]!)]),
    ),
    hand: handResult(scenario, checked.hand),
    closure: checked.closure && closureResult(scenario, checked.closure),
    assumed,
    cautions,
  }
}

/** Makes the document of a scenario that breaks the rules of the format: its findings are all that is known. */
export function refusedResult(problems: readonly Problem[]): CheckResult {
  const findings = problems.map(
    ({ code, path, source, line, column, found, rule, fix }): FindingResult => ({
      code,
      severity: 'error',
      path,
      place: { source, line, column },
      message: found ? `${rule}; found: ${found}` : rule,
      basis: 'rule of the format',
      fix,
    }),
  )
  return {
    format: 'tapeshift-result/1',
    command: 'check',
    made: null,
    display: 'metric',
    canWork: false,
    counts: countsOf(findings),
    findings,
    cases: {},
    hand: null,
    closure: null,
    assumed: [],
    cautions,
  }
}

function countsOf(findings: readonly FindingResult[]): Record<Severity, number> {
  const count = (severity: Severity) => findings.filter((each) => each.severity === severity).length
  return Object.fromEntries(severities.map((each) => [each, count(each)])) as Record<Severity, number>
}

function caseResult(kind: Scenario['cases'][string], share: number) {
  const size = outsideSize(kind)
  const certificate = certificateOf(kind)
  const row = certificate && limitsOf(certificate)
  return {
    share: amount(share, 'share'),
    given: kind.inside ? 'inside' : 'outside',
    length: amount(size.length, 'm'),
    width: amount(size.width, 'm'),
    height: amount(size.height, 'm'),
    united: amount(unitedSize(size), 'm'),
    weight: amount(kind.weight ?? null, 'kg'),
    wall: wallOf(kind),
    boardRow: row
      ? {
          name: row.name,
          weight: amount(row.weight, 'kg'),
          united: amount(row.united, 'm'),
          basis: row.basis,
        }
      : null,
  }
}

/** Which piece sets the rate, in a sentence. */
function bottleneckSentence(scenario: Scenario, { line }: HandCalculation): string {
  const words = wordsFor(scenario.display)
  const piece = line.bottleneck
  if (!piece) return 'No piece of the line needs time: nothing but the arrivals sets the rate.'
  const spare = toSpare(piece)
  const compared =
    spare >= 1
      ? `${words.share(spare - 1)} more than the ${words.rate(piece.flow)} that come to it`
      : `${words.share(1 - spare)} less than the ${words.rate(piece.flow)} that come to it`
  const able =
    piece.rateAfterStops < piece.rate
      ? `${words.rate(piece.rate)} while it runs and ${words.rate(piece.rateAfterStops)} after its own stops`
      : `${words.rate(piece.rate)}`
  return `The bottleneck is \`${piece.name}\`: it can do ${able}, ${compared}.`
}

function handResult(scenario: Scenario, hand: HandCalculation) {
  const { line, tape } = hand
  const rate = (value: number) => amount(value, 'cases/s')
  return {
    target: amount(scenario.target ?? null, 'cases/s'),
    workingTime: amount(line.working, 's'),
    arriving: {
      perShift: amount(line.perShift, 'cases'),
      mean: rate(line.arriving),
      peak: rate(line.peak.rate),
      peakHour: line.peak.hour + 1,
      sources: Object.fromEntries(
        line.sources.map(({ name, perShift, whenFull, how }) => [
          name,
          { perShift: amount(perShift, 'cases'), mean: rate(perShift / line.working), whenFull, how },
        ]),
      ),
    },
    throughput: rate(line.throughput),
    expected: expectedAmounts(hand),
    limit: rate(line.limit),
    limitAfterStops: rate(line.limitAfterStops),
    bottleneck: line.bottleneck?.name ?? null,
    sentence: bottleneckSentence(scenario, hand),
    pieces: Object.fromEntries(
      line.pieces.map((piece) => [
        piece.name,
        {
          type: piece.type,
          comes: rate(piece.flow),
          comesAtPeak: rate(piece.peakFlow),
          rate: rate(piece.rate),
          rateAfterStops: rate(piece.rateAfterStops),
          utilisation: amount(piece.flow > 0 ? piece.flow / piece.rate : 0, 'share'),
          perShift: amount(piece.perShift, 'cases'),
          how: piece.how,
          stops: piece.stops.map(({ key, perCase, time }) => ({
            stop: key,
            perCase: amount(perCase, '1/case'),
            time: amount(time, 's'),
          })),
        },
      ]),
    ),
    rows: foretoldRows(scenario, hand),
    buffers: hand.buffers.map((each) => ({
      name: each.name,
      places: amount(each.places, 'cases'),
      riding: amount(each.riding, 'cases'),
      lasts: amount(each.lasts, 's'),
    })),
    machines: hand.machineBuffers.map((each) => ({
      machine: each.machine,
      before: each.before,
      free: amount(each.places, 'cases'),
      lasts: amount(each.lasts, 's'),
      meanStop: amount(each.meanStop, 's'),
      drain: amount(each.drain, 's'),
    })),
    pairs: hand.pairs.map((each) => ({
      first: each.first,
      second: each.second,
      between: each.between,
      free: amount(each.places, 'cases'),
      lasts: amount(each.lasts, 's'),
      firstStops: each.firstStops && stopsResult(each.firstStops),
      secondStops: stopsResult(each.secondStops),
      lostOutputRecovered: amount(each.share, 'share'),
      how: each.how,
    })),
    crews: Object.fromEntries(
      hand.crews.map(({ name, people, busy, occupied, load }) => [
        name,
        {
          people,
          busy: amount(busy, 'share'),
          occupied: amount(occupied, 'share'),
          withAllowance: amount(load, 'share'),
        },
      ]),
    ),
    tape: tape && {
      perShift: amount(tape.used, 'm'),
      perMonth: amount(tape.month, 'm'),
      mass: amount(tape.mass, 'kg'),
      perCase: amount(tape.perCase, 'm/case'),
      rolls: amount(tape.rolls, 'rolls'),
      changes: amount(tape.changes, 'count'),
      costPer1000: amount(tape.costPerThousand, unitName('money', currencyOf(scenario))),
      heads: tape.heads.map((head) => ({
        machine: head.machine,
        head: head.head,
        strip: amount(head.strip, 'm/case'),
        stripsPerRoll: amount(head.perRoll, 'cases'),
        perShift: amount(head.used, 'm'),
        rolls: amount(head.rolls, 'rolls'),
        changes: amount(head.changes, 'count'),
      })),
    },
    curves: hand.curves.map((curve) => ({
      machine: curve.machine,
      meanLength: amount(curve.meanLength, 'm'),
      speed: amount(curve.speed, 'm/s'),
      rated: amount(curve.rated, 'm/s'),
      ceiling: rate(curve.ceiling),
      littleGainFrom: amount(curve.littleGain, 'm/s'),
      points: curve.points.map((point) => ({
        speed: amount(point.speed, 'm/s'),
        gap: amount(point.gap, 'm'),
        rate: rate(point.rate),
      })),
    })),
  }
}

/** Expected output with its units. */
function expectedAmounts({ expected, line }: HandCalculation) {
  const { throughput, perShift, why, most, arriving, pace, losses, error } = expectedResult(expected, line)
  const rate = (value: number | null) => amount(value, 'cases/s')
  return {
    throughput: rate(throughput),
    perShift: amount(perShift, 'cases'),
    why,
    atMost: rate(most),
    arriving: rate(arriving),
    pace,
    losses: losses.map(({ lost, waitingForCrew, felt, rest, ...loss }) => ({
      ...loss,
      lost: rate(lost),
      waitingForCrew: rate(waitingForCrew),
      felt: amount(felt, 'share'),
      rest: amount(rest, 's'),
    })),
    usualError: {
      often: amount(error.often, 'share'),
      within: amount(error.within, 'share'),
      high: amount(error.high, 'share'),
      worst: amount(error.worst, 'share'),
      words: error.words,
    },
  }
}

const stopsResult = ({ meanUp, meanRepair }: Unreliable) => ({
  meanRunning: amount(meanUp, 's'),
  meanStop: amount(meanRepair, 's'),
})

function closureResult(scenario: Scenario, closure: ClosureComparison) {
  return {
    meaning:
      'Ratios to the reference closure, never a life in hours: above 1 holds better. After S. Abbott, practical adhesion (shear of pressure-sensitive adhesives).',
    proof: closureProof,
    reference: closure.reference ?? null,
    compared: closure.rows.map((row) => ({
      case: row.case,
      width: amount(row.width, 'm'),
      isChosen: row.isChosen,
      coverage: amount(row.coverage, 'm'),
      index: row.index,
    })),
    widths: closure.widths.map((each) => ({
      width: amount(each.width, 'm'),
      isChosen: each.isChosen,
      headsThatDoNotTakeIt: each.unfit,
      massPer1000: amount(each.mass, 'kg per 1000 cases'),
      costPer1000: amount(each.cost, unitName('money', currencyOf(scenario))),
    })),
    openedCasesToSpare: amount(closure.breakEven, 'per 1000 cases'),
    notes: closure.notes,
  }
}
