/** The hand calculation, the cases and the closures of a check as its document has them: amounts in SI, in a fixed order. */

import type { Amount } from '../../catalogue/figure.js'
import { wordsFor } from '../../catalogue/printed-units.js'
import { currencyOf, unitName } from '../../catalogue/unit-name.js'
import type { ClosureComparison } from '../../hand/closing.js'
import { expectedResult } from '../../hand/expected-result.js'
import { certificateOf, wallOf } from '../../hand/findings/case.js'
import { foretoldRows } from '../../hand/foretold.js'
import type { HandCalculation } from '../../hand/hand.js'
import { toSpare } from '../../hand/line.js'
import { outsideSize, sizeEnds, varies } from '../../scenario/outside.js'
import type { Scenario } from '../../scenario/schema.js'
import { limitsOf } from '../../trade/board.js'
import type { Unreliable } from '../../trade/buffer.js'
import { unitedSize } from '../../trade/case.js'
import { closureProof } from '../../trade/closure.js'

const amount = (value: number | null, unit: string): Amount => ({
  value: value !== null && Number.isFinite(value) ? value : null,
  unit,
})

/** Amounts of a thing by their keys, in their units. */
const amounts = <Key extends string>(
  of: Readonly<Record<NoInfer<Key>, number | null>>,
  units: Readonly<Record<Key, string>>,
): Record<Key, Amount> =>
  Object.fromEntries(
    Object.entries<string>(units).map(([key, unit]) => [key, amount(of[key as Key], unit)]),
  ) as Record<Key, Amount>

export function caseResult(kind: Scenario['cases'][string], share: number) {
  const { length, width, height } = outsideSize(kind)
  const certificate = certificateOf(kind)
  const row = certificate && limitsOf(certificate)
  return {
    share: amount(share, 'share'),
    given: kind.inside ? 'inside' : 'outside',
    ...amounts({ length, width, height }, { length: 'm', width: 'm', height: 'm' }),
    // in m; the sides above are their means then
    ...(varies(kind) ? { ends: sizeEnds(kind) } : {}),
    united: amount(unitedSize({ length, width, height }), 'm'),
    weight: amount(kind.weight ?? null, 'kg'),
    wall: wallOf(kind),
    boardRow: row
      ? { name: row.name, ...amounts(row, { weight: 'kg', united: 'm' }), basis: row.basis }
      : null,
  }
}

/** Which piece sets the rate, in a sentence. */
function bottleneckSentence(scenario: Scenario, { line }: HandCalculation): string {
  const words = wordsFor(scenario.display)
  const piece = line.bottleneck
  if (!piece) return 'No piece of the line needs time: only the arrivals set the rate.'
  const spare = toSpare(piece)
  const arrivals = `its arrivals of ${words.rate(piece.flow)}`
  const able =
    piece.rateAfterStops < piece.rate
      ? `${words.rate(piece.rate)} while it runs, and ${words.rate(piece.rateAfterStops)} after its own stops`
      : `${words.rate(piece.rate)}`
  // what has room to spare holds nothing up
  return spare >= 1
    ? `The piece with least to spare is \`${piece.name}\`: it can do ${able}. That is ${words.share(spare - 1)} more than ${arrivals}.`
    : `The bottleneck is \`${piece.name}\`: it can do ${able}. That is ${words.share(1 - spare)} less than ${arrivals}.`
}

export function handResult(scenario: Scenario, hand: HandCalculation) {
  const { line } = hand
  return {
    target: amount(scenario.target ?? null, 'cases/s'),
    workingTime: amount(line.working, 's'),
    arriving: arrivingResult(hand),
    throughput: rate(line.throughput),
    expected: expectedAmounts(hand),
    ...amounts(line, { limit: 'cases/s', limitAfterStops: 'cases/s' }),
    bottleneck: line.bottleneck?.name ?? null,
    sentence: bottleneckSentence(scenario, hand),
    pieces: Object.fromEntries(line.pieces.map((piece) => [piece.name, pieceResult(piece)])),
    rows: foretoldRows(scenario, hand),
    buffers: hand.buffers.map((each) => ({
      name: each.name,
      ...amounts(each, { places: 'cases', riding: 'cases', lasts: 's' }),
    })),
    machines: hand.machineBuffers.map((each) => ({
      machine: each.machine,
      before: each.before,
      free: amount(each.places, 'cases'),
      ...amounts(each, { lasts: 's', meanStop: 's', drain: 's' }),
    })),
    pairs: hand.pairs.map(pairResult),
    crews: Object.fromEntries(
      hand.crews.map(({ name, people, busy, occupied, other, load }) => [
        name,
        {
          people,
          ...amounts({ busy, occupied }, { busy: 'share', occupied: 'share' }),
          ...(other > 0 ? { otherWork: amount(other, 'share') } : {}),
          withAllowance: amount(load, 'share'),
        },
      ]),
    ),
    tape: hand.tape && tapeResult(hand.tape, unitName('money', currencyOf(scenario))),
    curves: hand.curves.map((curve) => ({
      machine: curve.machine,
      ...amounts(curve, { meanLength: 'm', speed: 'm/s', rated: 'm/s', ceiling: 'cases/s' }),
      littleGainFrom: amount(curve.littleGain, 'm/s'),
      points: curve.points.map((point) => amounts(point, { speed: 'm/s', gap: 'm', rate: 'cases/s' })),
    })),
  }
}

const rate = (value: number | null) => amount(value, 'cases/s')

function arrivingResult({ line }: HandCalculation) {
  return {
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
  }
}

const pieceResult = (piece: HandCalculation['line']['pieces'][number]) => ({
  type: piece.type,
  comes: rate(piece.flow),
  comesAtPeak: rate(piece.peakFlow),
  ...amounts(piece, { rate: 'cases/s', rateAfterStops: 'cases/s' }),
  utilisation: amount(piece.flow > 0 ? piece.flow / piece.rate : 0, 'share'),
  perShift: amount(piece.perShift, 'cases'),
  how: piece.how,
  stops: piece.stops.map((stop) => ({
    stop: stop.key,
    ...(stop.jam === undefined ? {} : { jam: stop.jam }),
    ...amounts(stop, { perCase: '1/case', time: 's' }),
  })),
})

const pairResult = (pair: HandCalculation['pairs'][number]) => ({
  first: pair.first,
  second: pair.second,
  between: pair.between,
  free: amount(pair.places, 'cases'),
  lasts: amount(pair.lasts, 's'),
  firstStops: pair.firstStops && stopsResult(pair.firstStops),
  secondStops: stopsResult(pair.secondStops),
  lostOutputRecovered: amount(pair.share, 'share'),
  how: pair.how,
})

const tapeResult = (tape: NonNullable<HandCalculation['tape']>, money: string) => ({
  perShift: amount(tape.used, 'm'),
  perMonth: amount(tape.month, 'm'),
  ...amounts(tape, { mass: 'kg', perCase: 'm/case', rolls: 'rolls', changes: 'count' }),
  costPer1000: amount(tape.costPerThousand, money),
  heads: tape.heads.map((head) => ({
    machine: head.machine,
    head: head.head,
    strip: amount(head.strip, 'm/case'),
    stripsPerRoll: amount(head.perRoll, 'cases'),
    perShift: amount(head.used, 'm'),
    ...amounts(head, { rolls: 'rolls', changes: 'count' }),
  })),
})

/** Expected output with its units. */
function expectedAmounts({ expected, line }: HandCalculation) {
  const { throughput, perShift, why, most, arriving, pace, losses, error } = expectedResult(expected, line)
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
      ...amounts(error, { often: 'share', within: 'share', high: 'share', worst: 'share' }),
      words: error.words,
    },
  }
}

const stopsResult = ({ meanUp, meanRepair }: Unreliable) => ({
  meanRunning: amount(meanUp, 's'),
  meanStop: amount(meanRepair, 's'),
})

export function closureResult(scenario: Scenario, closure: ClosureComparison, told: ReadonlySet<string>) {
  return {
    meaning:
      'Ratios to the reference closure: above 1 holds better. They are not a life in hours. After S. Abbott, practical adhesion (shear of pressure-sensitive adhesives).',
    proof: closureProof,
    reference: closure.reference ?? null,
    compared: closure.rows
      .filter((row) => told.has(row.case))
      .map((row) => ({
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
