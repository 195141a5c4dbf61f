/** What a scenario gives for an element of cost and cannot be used, because the rest that the element takes is not given. The one home of that rule. */
import { has } from '../kinds/traits.js'
import { invested } from '../trade/money.js'
import { capitalOf } from './capital.js'
import type { Scenario } from './schema.js'

/** Something that an element of cost takes. */
interface Key {
  path: string
  /** How it may be written; CURRENCY and PIECE stand for those of the scenario. */
  example: string
  /** How much of it is given, in SI or money; none where nothing is. */
  amount: (scenario: Scenario) => number | null | undefined
  /** How it is named where the path alone says too little. */
  words?: string
  /** Other elements take it too: given alone it asks for nothing here. */
  isShared?: true
}

/** What is given for an element of cost that is left out all the same. */
export interface Dropped {
  /** The element that is left out, as results name it, and in words that stand alone. */
  leavesOut: string
  words: string
  /** Paths of what is given for it, and of what is missing with words and an example. */
  given: string[]
  missing: { path: string; words: string; example: string }[]
  /** How much is given of all that the element takes; null where nothing is. Designs with the same amounts leave out alike. */
  amounts: (number | null)[]
}

const exampleFor = (example: string, { money, tape, line }: Scenario): string => {
  const sealer = Object.entries(line).find(([, piece]) => has(piece, 'tapes'))
  return example
    .replace('CURRENCY', money?.currency ?? tape.price?.currency ?? 'EUR')
    .replace('PIECE', `${sealer?.[0] ?? Object.keys(line)[0]}`)
}
const sum = (values: readonly number[]) =>
  values.length > 0 ? values.reduce((total, each) => total + each, 0) : null

const key = (path: string, example: string, amount: Key['amount']): Key => ({ path, example, amount })
const shared = (each: Key): Key => ({ ...each, isShared: true })

const shifts = shared(key('money.shifts', '480 per yr', ({ money }) => money?.shifts))
const capital = key('money.capital', '{line.PIECE: 20000 CURRENCY}', (scenario) => {
  const bought = capitalOf(scenario)
  return bought && Object.keys(bought).length > 0 ? invested({ capital: bought }) : null
})
const sealer = {
  ...shared(
    key(
      'line',
      '{type: sealer}',
      ({ line }) => Object.values(line).filter((piece) => has(piece, 'tapes')).length || null,
    ),
  ),
  words: 'a sealer in `line`',
}

/** Elements of cost that take more than one key, by their labels in results; the others are counted as soon as they are given. */
const elements: readonly { label: string; words?: string; keys: readonly Key[] }[] = [
  { label: 'tape', keys: [key('tape.price', '40 CURRENCY/roll', ({ tape }) => tape.price?.amount), sealer] },
  {
    label: 'stops of the sealers',
    keys: [key('money.downtime', '90 CURRENCY/h', ({ money }) => money?.downtime?.amount), sealer],
  },
  {
    label: 'energy',
    keys: [
      key('money.energy', '0.2 CURRENCY/kWh', ({ money }) => money?.energy?.amount),
      key('money.power', '{line.PIECE: 0.4 kW}', ({ money }) => sum(Object.values(money?.power ?? {}))),
    ],
  },
  {
    label: 'maintenance',
    keys: [key('money.maintenance', '4 %', ({ money }) => money?.maintenance), shared(capital), shifts],
  },
  {
    label: 'capital recovery',
    keys: [
      capital,
      key('money.life', '8 yr', ({ money }) => money?.life),
      key('money.interest', '8 %', ({ money }) => money?.interest),
      shifts,
    ],
  },
  {
    label: 'closing those again',
    words: 'closing again what opens later',
    keys: [
      key('closure.reopens.repair', '5 min', ({ closure }) =>
        closure?.reopens?.repair === undefined ? null : closure.reopens.chance * closure.reopens.repair,
      ),
      shared(key('money.labour', '30 CURRENCY/h', ({ money }) => money?.labour?.amount)),
    ],
  },
]

/** What `scenario` gives for its cost and cannot be used, in the order of the elements. What is 0 is not missed. */
export function droppedOf(scenario: Scenario): Dropped[] {
  return elements.flatMap(({ label, words, keys }) => {
    const amounts = keys.map((each) => each.amount(scenario) ?? null)
    const isGiven = keys.some(({ isShared }, index) => !isShared && (amounts[index] ?? 0) > 0)
    const missing = keys.filter((_, index) => amounts[index] === null)
    if (!isGiven || missing.length === 0) return []
    return [
      {
        leavesOut: label,
        words: words ?? label,
        given: keys.flatMap(({ path, isShared }, index) =>
          isShared || amounts[index] === null ? [] : [path],
        ),
        missing: missing.map(({ path, example, words: named = `\`${path}\`` }) => ({
          path,
          words: named,
          example: exampleFor(example, scenario),
        })),
        amounts,
      },
    ]
  })
}

const listed = (words: readonly string[]) =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** What is given, what is missing and what that leaves out, in a sentence. */
export const droppedText = ({ words, given, missing }: Dropped): string =>
  `${listed(given.map((path) => `\`${path}\``))} ${given.length === 1 ? 'is' : 'are'} given, but not ${listed(missing.map((each) => each.words))}. So the cost does not include ${words}.`

/** The nearest fix, with an example of each key. */
export const droppedFix = ({ missing }: Dropped): string =>
  `add ${listed(missing.map(({ words, example }) => `${words} (such as \`${example}\`)`))}`
