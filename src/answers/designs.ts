/** The designs that choices make: every combination, each read as a scenario, in order of what it costs. */

import { shiftCostByHand } from '../hand/hand.js'
import { has } from '../kinds/traits.js'
import { type Choice, choiceWritten, givenTwice, valuesOf } from '../scenario/choices.js'
import { misuse, readAt } from '../scenario/fault.js'
import type { Evidence } from '../scenario/known.js'
import { printable, shown } from '../scenario/printable.js'
import { unlessNoScenario } from '../scenario/problems.js'
import type { ReadScenario } from '../scenario/read.js'
import type { Scenario } from '../scenario/schema.js'

/** The path that takes names of variants. */
export const variantPath = 'variant'

/** Its word for the scenario itself. */
const noVariant = 'base'

/** Most designs of one study. */
export const mostDesigns = 100_000

/** One combination: which value of each choice, and the scenario with them. */
export interface ChosenDesign {
  /** Place of the value in each choice. */
  places: number[]
  set: Record<string, unknown>
  scenario: Scenario
  /** What its values rest on. */
  evidence: readonly Evidence[]
  /** Cost of a shift by hand; null where nothing is priced. */
  cost: number | null
  key: string
}

/** The choices as the command line gives them, or the scenario. Throws `Fault` `asked`. */
export function choicesOf(written: readonly string[], { scenario }: ReadScenario): Choice[] {
  const choices =
    written.length > 0
      ? written.map((text) => readAt(`--choose ${shown(text)}`, () => choiceWritten(text)))
      : Object.entries(scenario.size?.choose ?? {}).map(([path, values]) => ({
          path,
          values: Array.isArray(values)
            ? values
            : readAt(`size.choose.${shown(path)}`, () => valuesOf(values)),
        }))
  if (choices.length === 0)
    throw misuse(
      'nothing to choose: give --choose "PATH=low..high/step", or name choices under `size: choose:` in the scenario',
    )
  const twice = choices.find(({ path }, index) => choices.findIndex((each) => each.path === path) < index)
  if (twice) throw misuse(`${shown(twice.path)} is chosen twice: give all its values in one choice`)
  for (const { path, values } of choices) {
    const again = givenTwice(values)
    if (again !== undefined) throw misuse(`${shown(path)}: the value \`${shown(again)}\` is given twice`)
  }
  return choices
}

/** Faults of a value that no combination mends. */
const slips = [
  'no-such-path',
  'unknown-key',
  'not-a-quantity',
  'no-unit',
  'unknown-unit',
  'wrong-unit',
  'wrong-type',
]

/**
 * Reads every combination. Those that are no scenario, such as belts faster than a head allows, are left out: `refused`
 * tells why and how many. Throws `ScenarioError` of a value that fits nowhere.
 */
export function combine(
  choices: readonly Choice[],
  loaded: ReadScenario,
  rate: (scenario: Scenario) => number,
): { designs: ChosenDesign[]; refused: Map<string, number>; all: number } {
  const all = choices.reduce((product, { values }) => product * values.length, 1)
  if (all > mostDesigns)
    throw misuse(`${all} designs are too many: at most ${mostDesigns}. Take larger steps or fewer choices`)
  const designs: ChosenDesign[] = []
  const refused = new Map<string, number>()
  for (let number = 0; number < all; number++) {
    const places = placesOf(number, choices)
    const set = Object.fromEntries(choices.map(({ path, values }, index) => [path, values[places[index]!]]))
    const variant = variantOf(set[variantPath], loaded)
    const design = unlessNoScenario(() => loaded.vary(variant, changesOf(set)))
    if ('problem' in design) {
      if (slips.includes(design.problem.code)) throw design.error
      refused.set(design.reason, (refused.get(design.reason) ?? 0) + 1)
      continue
    }
    const { made } = design
    designs.push({
      ...{ places, set, scenario: made.scenario, evidence: made.evidence, key: loaded.shiftsHash(made) },
      cost: shiftCostByHand(made.scenario, rate(made.scenario)),
    })
  }
  if (designs.length === 0)
    throw misuse(`none of the ${all} designs can be simulated: ${printable([...refused.keys()].join('; '))}`)
  return { designs, refused, all }
}

/** The value of each choice in the combination of that number; the last choice changes fastest. */
function placesOf(number: number, choices: readonly Choice[]): number[] {
  const places = new Array<number>(choices.length)
  let rest = number
  for (let index = choices.length - 1; index >= 0; index--) {
    const { length } = choices[index]!.values
    places[index] = rest % length
    rest = Math.floor(rest / length)
  }
  return places
}

function variantOf(name: unknown, { variants }: ReadScenario): string | null {
  if (name === undefined || name === noVariant) return null
  const known = variants.find((variant) => variant.name === name)
  if (!known)
    throw misuse(
      `there is no variant \`${shown(name)}\`; there are ${[noVariant, ...variants.map((each) => each.name)].join(', ')}`,
    )
  return known.name
}

const changesOf = (set: Record<string, unknown>) =>
  Object.entries(set)
    .filter(([path]) => path !== variantPath)
    .map(([path, value]) => ({ path, value, source: `choice ${path}` }))

/** What stands first of designs that cost the same: fewer machines, slower belts, shorter conveyors, fewer people. */
function statedOrder({ line, crew }: Scenario): number[] {
  const pieces = Object.values(line)
  const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0)
  return [
    pieces.length,
    sum(pieces.flatMap((piece) => (has(piece, 'tapes') ? [piece['belt-speed']] : []))),
    sum(pieces.flatMap((piece) => (has(piece, 'conveys') ? [piece.length] : []))),
    sum(Object.values(crew).map(({ people }) => people)),
  ]
}

/** Puts designs in order: by cost, then by the places of the values of `first`, then as stated. */
export function inOrder(
  designs: readonly ChosenDesign[],
  choices: readonly Choice[],
  first: readonly string[],
): ChosenDesign[] {
  const places = first.map((path) => choices.findIndex((choice) => choice.path === path))
  const keys = new Map(
    designs.map((design) => [
      design,
      [
        design.cost === null ? 0 : Math.round(design.cost * 1e6) / 1e6,
        ...places.map((place) => design.places[place]!),
        ...statedOrder(design.scenario),
        ...design.places,
      ],
    ]),
  )
  return [...designs].sort((a, b) => {
    const [one, other] = [keys.get(a)!, keys.get(b)!]
    const at = one.findIndex((value, index) => value !== other[index])
    return at < 0 ? 0 : one[at]! - other[at]!
  })
}
