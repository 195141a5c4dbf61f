/** Findings on machines and conveyors: gaps, speeds, legs, rolls, rollers, zones and buffers. */

import { gapOf } from '../../kinds/sealer/hand.js'
import { headsOf } from '../../kinds/sealer/heads.js'
import type { SealerKeys } from '../../kinds/sealer/keys.js'
import { has } from '../../kinds/traits.js'
import { sizeEnds } from '../../scenario/outside.js'
import { lineWays, reachOf } from '../../scenario/routes.js'
import type { Scenario } from '../../scenario/schema.js'
import { leastBufferInStops } from '../../trade/buffer.js'
import { infeedSpeedRatio, leastZone, speedRatioFor, widestRollerPitch } from '../../trade/conveyor.js'
import { drumDiameters, legSettings, legsFit } from '../../trade/head.js'
import { rollDiameter } from '../../trade/tape.js'
import { zonesFor } from '../../trade/zones.js'
import type { Looked, Rule, Tell } from '../finding.js'
import { hasSealer } from '../pace.js'

/** Rounding of lengths that are meant to be alike, m. */
const hair = 1e-9
/** 60 ft/min is commonly written as 18.3 m/min. */
const speedRounding = 1.005

const quoted = (text: string) => `\`${text}\``

/** Kinds that come to a piece, with the outside size of the smallest and the largest of each. */
function comingTo(scenario: Scenario, name: string) {
  const reach = reachOf(scenario)
  return Object.entries(scenario.cases)
    .filter(([kind]) => reach(kind).has(name))
    .map(([kind, keys]) => ({ kind, ...sizeEnds(keys) }))
}

export const sealerFindings: Rule = (looked, tell) => {
  for (const [name, piece] of Object.entries(looked.scenario.line))
    if (has(piece, 'tapes')) {
      tellGap(looked, name, piece, tell)
      tellInfeed(looked, name, piece, tell)
      tellRolls(looked, name, piece, tell)
    }
  for (const curve of looked.hand.curves)
    if (curve.speed > curve.littleGain + hair)
      tell.note(
        'belts-too-fast-to-help',
        ['line', curve.machine, 'belt-speed'],
        `Above ${looked.words.speed(curve.littleGain)} another ${looked.words.speed(1 / 60)} brings less than 0.25 cases/min, because the gap grows with the speed. ${quoted(curve.machine)} never passes more than ${looked.words.rate(curve.ceiling)}: one case per reset.`,
        'derived; the 0.25 is a project rule',
        'shorten `cut.reset`: it brings more than faster belts',
      )
}

function tellGap({ words }: Looked, name: string, piece: SealerKeys, tell: Tell): void {
  const gap = gapOf(piece)
  if (gap > piece['minimum-gap'] + hair)
    tell.note(
      'gap-set-by-heads',
      ['line', name, 'minimum-gap'],
      `At ${words.speed(piece['belt-speed'])} the heads need a gap of ${words.length(gap)} (wipe-travel + speed x reset), more than the minimum-gap of ${words.length(piece['minimum-gap'])}. A gap of ${words.length(gap)} is kept.`,
      'derived from the motion of the arm',
      'set the infeed for this gap',
    )
}

function tellInfeed({ scenario, words }: Looked, name: string, piece: SealerKeys, tell: Tell): void {
  const shortest = comingTo(scenario, name).reduce(
    (least, each) => Math.min(least, each.least.length),
    Infinity,
  )
  const folds = piece.flaps.time.law !== 'constant' || piece.flaps.time.value > 0
  for (const [feeder, ways] of lineWays(scenario)) {
    const conveyor = scenario.line[feeder]!
    if (!has(conveyor, 'conveys') || !ways.some(({ target }) => target === name)) continue
    const [speed, next] = [conveyor.speed, piece['belt-speed']]
    if (speed > next * speedRounding)
      tell.warning(
        'belts-slower-than-infeed',
        ['line', name, 'belt-speed'],
        `${quoted(feeder)} runs at ${words.speed(speed)}, but the belts of ${quoted(name)} only at ${words.speed(next)}: cases push against the case on the belts.`,
        `from memory, low confidence: belts ${infeedSpeedRatio} to 1.5 times as fast as cases arrive, never slower than what feeds them`,
        `set the belts to at least ${words.speed(speed)}, or slow down ${quoted(feeder)}`,
      )
    // a case that stands to be folded is let go when the gap is there; one that runs straight through is not
    if (folds || !Number.isFinite(shortest) || conveyor.zone !== undefined) continue
    const gap = gapOf(piece)
    const needed = speedRatioFor(shortest, gap) * (shortest / (shortest + conveyor.spacing))
    const are =
      words.speed(speed) === words.speed(next)
        ? `both run at ${words.speed(speed)}`
        : `they are only ${(next / speed).toPrecision(3)} times (${words.speed(speed)} and ${words.speed(next)})`
    if (next / speed < needed * (1 - hair))
      tell.warning(
        'gap-at-infeed',
        ['line', name, 'flaps'],
        `Cases that touch on ${quoted(feeder)} must be pulled apart to a gap of ${words.length(gap)}. For a case of ${words.length(shortest)} the belts must be ${needed.toPrecision(3)} times as fast as the conveyor, but ${are}. Nothing else holds the cases back: folding the flaps takes no time.`,
        'derived',
        'put a stop or a metering belt before the heads, as the model assumes; or slow down the infeed',
      )
  }
}

function tellRolls({ scenario, words }: Looked, name: string, piece: SealerKeys, tell: Tell): void {
  const { tape } = scenario
  const diameter = rollDiameter(tape.roll, tape.thickness)
  const heads = headsOf(piece)
  for (const [which, { drum }] of heads)
    if (drum !== undefined && diameter > drum + hair)
      tell.error(
        'roll-does-not-fit',
        ['line', name, 'heads', which, 'drum'],
        `A roll of ${words.distance(tape.roll)} of ${Math.round(tape.thickness * 1e6)} um tape is ${words.length(diameter)} across on a usual core, but the ${which} head of ${quoted(name)} takes only ${words.length(drum)}.`,
        'derived from the length, the thickness and a core of 85 mm (from memory)',
        `use a shorter roll, thinner tape or a larger drum`,
        diameter / drum,
      )
  if (heads.some(([, { drum }]) => drum === undefined) && diameter > drumDiameters.largest)
    tell.warning(
      'large-roll',
      ['tape', 'roll'],
      `A roll of ${words.distance(tape.roll)} of ${Math.round(tape.thickness * 1e6)} um tape is ${words.length(diameter)} across; common drums take ${words.length(drumDiameters.smallest)} to ${words.length(drumDiameters.largest)}.`,
      'from memory, low confidence',
      'give `drum` for the heads, or use a shorter roll',
    )
}

/** Opposite strips of all heads that a case passes, by the sides on which they lie. */
export const legFindings: Rule = ({ scenario, words }, tell) => {
  const { leg } = scenario.tape
  if (leg < legSettings[0] - hair && hasSealer(scenario))
    tell.warning(
      'short-leg',
      ['tape', 'leg'],
      `Legs of ${words.length(leg)} are shorter than the usual ${words.length(legSettings[0])} to ${words.length(legSettings[1])}: the hold of a strip end grows with the square of its leg.`,
      'common practice, no source',
      `set legs of ${words.length(legSettings[0])} or more`,
    )
  const reach = reachOf(scenario)
  for (const [kind, keys] of Object.entries(scenario.cases)) {
    const sides = new Set(
      [...reach(kind)].flatMap((name) => {
        const piece = scenario.line[name]!
        return has(piece, 'tapes') ? headsOf(piece).map(([which]) => which) : []
      }),
    )
    const pair = [
      ['top', 'bottom'],
      ['left', 'right'],
    ].find(([one, other]) => sides.has(one!) && sides.has(other!))
    const { height } = sizeEnds(keys).least
    if (sides.size === 0 || legsFit(height, leg, pair ? leg : 0)) continue
    tell.error(
      'legs-meet',
      ['cases', kind],
      pair
        ? `The case ${quoted(kind)} is ${words.length(height)} from seam to seam. The legs of the ${pair[0]} and ${pair[1]} strip are ${words.length(leg)} each, so they meet on its ends.`
        : `The case ${quoted(kind)} is ${words.length(height)} from seam to seam, no more than one leg of ${words.length(leg)}.`,
      'derived: height above the sum of the legs',
      `set legs below ${words.length(pair ? height / 2 : height)}, or use a higher case`,
      (pair ? 2 * leg : leg) / height,
    )
  }
}

export const conveyorFindings: Rule = ({ scenario, words }, tell) => {
  for (const [name, piece] of Object.entries(scenario.line)) {
    if (!has(piece, 'conveys')) continue
    const coming = comingTo(scenario, name)
    if (coming.length === 0) continue
    const shortest = Math.min(...coming.map(({ least }) => least.length))
    const pitch = piece['roller-pitch']
    const widest = widestRollerPitch(shortest)
    if (pitch !== undefined && pitch > widest + hair)
      tell.error(
        'rollers-too-far-apart',
        ['line', name, 'roller-pitch'],
        `Rollers every ${words.length(pitch)} leave fewer than three under the shortest case of ${words.length(shortest)}: it dips and jams.`,
        'common practice, no source: three rollers under a case, four for soft bottoms',
        `use a pitch of at most ${words.length(widest)}`,
        pitch / widest,
      )
    if (piece.zone === undefined) continue
    const longest = Math.max(...coming.map(({ most }) => most.length))
    const taken = zonesFor(longest, piece.zone) * piece.zone
    if (taken < leastZone(longest) - hair)
      tell.warning(
        'short-zone',
        ['line', name, 'zone'],
        `The longest case of ${words.length(longest)} takes zones of ${words.length(taken)}. Only ${words.length(taken - longest)} are left to separate it from the next case.`,
        'from memory, low confidence: the longest case and 75 to 150 mm',
        `use zones of at least ${words.length(leastZone(longest))}`,
      )
  }
}

export const bufferFindings: Rule = ({ hand: { machineBuffers, line }, words }, tell) => {
  for (const { machine, before, lasts, meanStop, places } of machineBuffers) {
    if (!(lasts < leastBufferInStops * meanStop)) continue
    const free = Math.max(0, Math.floor(places))
    tell.note(
      'small-buffer',
      ['line', before[0] ?? machine],
      `${before.length > 0 ? `${before.map(quoted).join(', ')} ${before.length > 1 ? 'have' : 'has'} about ${words.count(free)} free ${free === 1 ? 'place' : 'places'}` : 'There is no waiting place'} before ${quoted(machine)}: room for ${words.time(lasts)} of arrivals, but a mean stop takes ${words.time(meanStop)}.`,
      'common practice, no source: two mean stops or more',
      `make room for ${words.count(Math.ceil(leastBufferInStops * meanStop * (line.pieces.find(({ name }) => name === machine)?.flow ?? 0)))} cases or more`,
    )
  }
}
