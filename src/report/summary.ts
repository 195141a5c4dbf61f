/** The first screen of a report: the question, the answer in a sentence, how sure it is, what limits the line, what to do next. */
import type { About } from '../study/about.js'
import type { EquipmentResult, Figure, LineResult } from '../study/line-result.js'
import type { RunResult } from '../study/result.js'
import { figureText, grouped, percentText, shareOfShifts } from './format.js'
import { butCannotWork, cannotWork, suffixCannotWork } from './warnings.js'

/** What a reader with a minute reads. */
export interface Summary {
  question: string
  answer: string
  /** How sure that is. */
  sureness: string[]
  /** What limits the line; empty where nothing is known. */
  limiting: string
  next: string[]
}

/** The question of a study: its purpose, else what the file asks in its first lines, else `usual`. */
export const questionOf = (about: About | undefined, usual: string): string =>
  about?.purpose ?? about?.question ?? usual

/** The first screen of a run. */
export function runSummary(result: RunResult): Summary {
  const { about, made, measures, target, display } = result
  const held = measures['target-held']
  const rate = `${Number(((target ?? 0) * 60).toPrecision(4))} cases/min`
  const output = `${figureText(measures.throughput, display)} on average, ${figureText(measures.output, display)} a shift`
  return {
    question: questionOf(
      about,
      target === null ? 'What does this line put out?' : 'Does this line hold its target?',
    ),
    answer:
      target !== null && held
        ? `The line ${cannotWork(result) ? 'would reach' : 'reaches'} its target of ${rate} in ${shareOfShifts(held)} of the shifts${butCannotWork(result, 'it')}. It ${cannotWork(result) ? 'would put' : 'puts'} out ${output}.`
        : `The line puts out ${output}. No target is given, so there is no verdict.`,
    sureness: [
      `${percentText(made.confidence)} confidence, from ${grouped(made.shifts, 0)} simulated ${result.shift.campaign > 1 ? 'campaigns' : 'shifts'}: what stands after ± or in brackets is how far off the figure may be by luck of the simulation.${average(result)}`,
      restingOn(result.assumed, about),
    ],
    limiting: limitingText(result, result.byHand),
    next: nextSteps(result),
  }
}

/** What the mean says of the target. */
function average(result: RunResult): string {
  const {
    target,
    measures: { throughput },
  } = result
  if (target === null || !throughput || throughput.low === null || throughput.high === null) return ''
  if (throughput.low >= target)
    return cannotWork(result)
      ? ` On average it would hold the target${suffixCannotWork(result)}.`
      : ' On average it holds the target: the whole interval does.'
  if (throughput.high < target) return ' On average it falls short of the target: the whole interval does.'
  return ' Whether it holds the target on average is not shown: the target lies within the interval.'
}

const weakOf = (assumed: RunResult['assumed']) =>
  assumed.filter(({ basis }) => basis !== 'definition of the format')

/** Luck is only one reason to be wrong: what was entered, and whether anybody has held the model against a plant. */
export function restingOn(assumed: RunResult['assumed'], about: About | undefined): string {
  const weak = weakOf(assumed).length
  const inputs =
    weak === 0
      ? 'Whether the inputs are right is not in it'
      : `Whether the inputs are right is not in it; ${weak === 1 ? '1 value was' : `${weak} values were`} assumed without a published source`
  const validated = about?.validatedBy
    ? `Held against: ${about.validatedBy}`
    : 'Not validated: the scenario names no plant data that the model was held against.'
  return `${inputs}. ${validated}`
}

const share = (piece: EquipmentResult, key: string) => piece.states[key]?.mean ?? 0

/** States that take most of a piece's time but work and breaks, in words. */
export function otherStates(piece: EquipmentResult, most = 3): string {
  return Object.entries(piece.states)
    .filter(([key, { mean }]) => key !== 'working' && key !== 'on-break' && (mean ?? 0) >= 0.0005)
    .sort((a, b) => b[1].mean! - a[1].mean!)
    .slice(0, most)
    .map(([, { label, mean }]) => `${label.slice(label.indexOf(': ') + 2)} ${percentText(mean!, 2)}`)
    .join(', ')
}

/** The piece that limits a line: the one with least to spare by hand, else the sealer that works most. */
export function limitingPiece(
  { equipment }: Pick<LineResult, 'equipment'>,
  byHand: string | null | undefined,
): [string, EquipmentResult] | null {
  const named = byHand ? equipment[byHand] : undefined
  if (named) return [byHand!, named]
  const sealers = Object.entries(equipment).filter(([, { type }]) => type === 'sealer')
  return sealers.sort((a, b) => share(b[1], 'working') - share(a[1], 'working'))[0] ?? null
}

/**
 * What limits a line, by hand and in the simulation: `By hand the line keeps up with what arrives; least to spare has sealer. It works
 * 70 % of the shift; the rest: blocked ahead 12 %. At the start of the line, packing waits for room 3 % of the time.`
 */
export function limitingText(
  result: Pick<LineResult, 'equipment' | 'arrivals'>,
  byHand: { bottleneck: string | null; shareAdmitted?: number } | null,
): string {
  const found = limitingPiece(result, byHand?.bottleneck)
  if (found === null) return ''
  const [name, piece] = found
  const others = otherStates(piece)
  const isOnly = Object.values(result.equipment).filter(({ type }) => type === 'sealer').length < 2
  const held = Object.entries(result.arrivals).flatMap(([source, { blocked }]) =>
    blocked?.mean && blocked.mean >= 0.0005
      ? `${source} waits for room ${percentText(blocked.mean, 2)} of the time`
      : [],
  )
  return [
    `${whyThis(name, byHand, isOnly)}. It works ${percentText(share(piece, 'working'), 2)} of the shift${others ? `; the rest${share(piece, 'on-break') >= 0.0005 ? ', breaks apart' : ''}: ${others}` : ''}.`,
    ...(held.length > 0 ? [`At the start of the line, ${held.join(', ')}.`] : []),
  ].join(' ')
}

function whyThis(name: string, byHand: Parameters<typeof limitingText>[1], isOnly: boolean): string {
  if (byHand?.bottleneck !== name)
    return isOnly ? `${name} is the only sealer` : `Of the sealers ${name} works most`
  const { shareAdmitted } = byHand
  if (shareAdmitted === undefined) return `By hand, ${name} has least to spare`
  return shareAdmitted < 1
    ? `By hand, ${name} has least to spare and lets in ${percentText(shareAdmitted, 2)} of what arrives`
    : `By hand the line keeps up with what arrives; ${name} has least to spare`
}

/** What may be tried against what takes most of a piece's time. Nothing here asks for stops to be put right in a hurry. */
const remedies: [states: RegExp, words: (name: string, share: string) => string][] = [
  [
    /^blocked$/,
    (name, of) =>
      `Look at what follows ${name}: it holds that up for ${of} of the shift. Try more conveyor there, or a faster piece.`,
  ],
  [
    /^waiting$/,
    (name, of) => `Look at what comes before ${name}, which waits for cases for ${of} of the shift.`,
  ],
  [
    /-waiting-for-crew$/,
    (name, of) =>
      `Try another person or shorter ways: stops of ${name} wait for crew for ${of} of the shift.`,
  ],
  [
    /^tape-being-changed$/,
    (name, of) =>
      `Try longer rolls, or holders on which the next one waits ready: rolls of ${name} are being changed for ${of} of the shift.`,
  ],
  [
    /^jam-being-cleared$/,
    (name, of) =>
      `Find what makes cases jam: jams of ${name} take ${of} of the shift. Clearing itself must not be hurried.`,
  ],
  [
    /^size-being-set$/,
    (name, of) =>
      `Try longer runs of one case, or a machine that sets itself: setting sizes at ${name} takes ${of} of the shift.`,
  ],
  [
    /^breakdown-being-repaired$/,
    (name, of) => `See to maintenance and spare parts: breakdowns of ${name} take ${of} of the shift.`,
  ],
  [/^blade-service$/, (name, of) => `Service blades outside the shift: at ${name} they take ${of} of it.`],
  [
    /^planned-stop$/,
    (name, of) =>
      `Try more cases between planned stops of ${name}, or a second piece that works meanwhile: they take ${of} of the shift.`,
  ],
]

/** Against the largest loss of the limiting piece and of the sealers; waiting for cases is none of theirs where all that comes is let in. */
function remedyFor(result: RunResult): string[] {
  const { equipment, byHand } = result
  const limiting = limitingPiece(result, byHand?.bottleneck)?.[0]
  const keepsUp = (byHand?.shareAdmitted ?? 1) >= 1
  const losses = Object.entries(equipment)
    .filter(([name, { type }]) => name === limiting || type === 'sealer')
    .flatMap(([name, { states }]) =>
      remedies.map(([keys, words]) => ({
        words,
        name,
        share: Object.entries(states).reduce(
          (sum, [key, { mean }]) =>
            sum + (keys.test(key) && !(keepsUp && key === 'waiting') ? (mean ?? 0) : 0),
          0,
        ),
      })),
    )
  const [worst] = losses.sort((a, b) => b.share - a.share)
  if (!worst || worst.share < 0.005) return []
  return [
    `${worst.words(worst.name, percentText(worst.share, 2))} What that is worth, tapeshift compare says.`,
  ]
}

/** What to do next, the most pressing first. */
function nextSteps(result: RunResult): string[] {
  const { target, measures, about, assumed } = result
  const held = measures['target-held']?.low ?? null
  return [
    ...putRightFirst(about),
    ...(target === null ? ['Give a target in the scenario, and the report says how often it is held.'] : []),
    ...moreShifts(result),
    ...(held !== null && held >= 0.95 && !cannotWork(result)
      ? [
          'The target is held in 95 % of the shifts or more: tapeshift size says whether a cheaper line does that too.',
        ]
      : remedyFor(result)),
    ...measureFirst(assumed, about),
  ]
}

/** Errors come before all else: one of each kind. */
export function putRightFirst(about: About | undefined): string[] {
  const errors = about?.findings.filter(({ severity }) => severity === 'error') ?? []
  return [...new Map([...errors].reverse().map((each) => [each.code, each])).values()]
    .reverse()
    .slice(0, 2)
    .map(
      ({ message, fix }) => `Put right first what the check calls an error: ${message} Nearest fix: ${fix}.`,
    )
}

/** Where the interval holds the target: how many shifts would tell, by the square root of their number. */
function moreShifts({ target, measures: { throughput }, made }: RunResult): string[] {
  if (target === null || !isOpen(throughput, target)) return []
  const { mean, low, high } = throughput as { mean: number; low: number; high: number }
  const needed = made.shifts * ((high - low) / 2 / Math.abs(mean - target)) ** 2
  const about =
    Number.isFinite(needed) && needed < 100_000
      ? ` About ${grouped(Number(needed.toPrecision(2)), 0)} would tell.`
      : ''
  return [`Simulate more shifts: these do not show whether the target is held on average.${about}`]
}

const isOpen = (figure: Figure | undefined, target: number) =>
  figure !== undefined &&
  figure.mean !== null &&
  figure.low !== null &&
  figure.high !== null &&
  figure.low < target &&
  figure.high >= target

/** What nobody measured, and whether anybody has held the model against a plant. */
export function measureFirst(assumed: RunResult['assumed'], about: About | undefined): string[] {
  const weak = weakOf(assumed)
  const named = weak.slice(0, 3).map(({ path }) => path)
  return [
    ...(weak.length > 0
      ? [
          `Put in your own value of ${named.join(', ')}${weak.length > 3 ? ` and ${weak.length - 3} more` : ''}: assumed without a published source.`,
        ]
      : []),
    ...(about?.validatedBy
      ? []
      : [
          'Before money is spent, hold the model against a record of the plant, and say so in the scenario (study: validated-by).',
        ]),
  ]
}
