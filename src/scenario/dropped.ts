/** What a scenario gives for an element of cost and cannot be used, because the rest that the element takes is not given. The one home of that rule. */
import { has } from '../kinds/traits.js'
import { invested } from '../trade/money.js'
import { capitalOf } from './capital.js'
import type { Scenario } from './schema.js'

/** Something that an element of cost takes. */
interface Key {
  path: string
  /** How it is named where the path alone says too little. */
  words?: string
  /** How much of it is given, in SI or money; null where nothing is. */
  amount: (scenario: Scenario) => number | null
  /** How it may be written. */
  example: (scenario: Scenario) => string
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

const currency = ({ money, tape }: Scenario) => money?.currency ?? tape.price?.currency ?? 'EUR'
const somePiece = ({ line }: Scenario) =>
  Object.entries(line).find(([, piece]) => has(piece, 'tapes'))?.[0] ?? Object.keys(line)[0]
const sum = (values: Readonly<Record<string, number>> | undefined) =>
  values && Object.keys(values).length > 0
    ? Object.values(values).reduce((total, each) => total + each, 0)
    : null

const shifts: Key = {
  path: 'money.shifts',
  amount: ({ money }) => money?.shifts ?? null,
  example: () => '480 per yr',
  isShared: true,
}
const capital: Key = {
  path: 'money.capital',
  amount: (scenario) => {
    const bought = capitalOf(scenario)
    return bought && Object.keys(bought).length > 0 ? invested({ capital: bought }) : null
  },
  example: (scenario) => `{line.${somePiece(scenario)}: 20000 ${currency(scenario)}}`,
}
const sealer: Key = {
  path: 'line',
  words: 'a sealer in `line`',
  amount: ({ line }) => Object.values(line).filter((piece) => has(piece, 'tapes')).length || null,
  example: () => '{type: sealer}',
  isShared: true,
}

/** Elements of cost that take more than one key, by their labels in results; the others are counted as soon as they are given. */
const elements: readonly { label: string; words?: string; keys: readonly Key[] }[] = [
  {
    label: 'tape',
    keys: [
      {
        path: 'tape.price',
        amount: ({ tape }) => tape.price?.amount ?? null,
        example: (scenario) => `40 ${currency(scenario)}/roll`,
      },
      sealer,
    ],
  },
  {
    label: 'stops of the sealers',
    keys: [
      {
        path: 'money.downtime',
        amount: ({ money }) => money?.downtime?.amount ?? null,
        example: (scenario) => `90 ${currency(scenario)}/h`,
      },
      sealer,
    ],
  },
  {
    label: 'energy',
    keys: [
      {
        path: 'money.energy',
        amount: ({ money }) => money?.energy?.amount ?? null,
        example: (scenario) => `0.2 ${currency(scenario)}/kWh`,
      },
      {
        path: 'money.power',
        amount: ({ money }) => sum(money?.power),
        example: (scenario) => `{line.${somePiece(scenario)}: 0.4 kW}`,
      },
    ],
  },
  {
    label: 'maintenance',
    keys: [
      {
        path: 'money.maintenance',
        amount: ({ money }) => money?.maintenance ?? null,
        example: () => '4 %',
      },
      { ...capital, isShared: true },
      shifts,
    ],
  },
  {
    label: 'capital recovery',
    keys: [
      capital,
      { path: 'money.life', amount: ({ money }) => money?.life ?? null, example: () => '8 yr' },
      { path: 'money.interest', amount: ({ money }) => money?.interest ?? null, example: () => '8 %' },
      shifts,
    ],
  },
  {
    label: 'closing those again',
    words: 'closing again what opens later',
    keys: [
      {
        path: 'closure.reopens.repair',
        amount: ({ closure }) =>
          closure?.reopens?.repair === undefined ? null : closure.reopens.chance * closure.reopens.repair,
        example: () => '5 min',
      },
      {
        path: 'money.labour',
        amount: ({ money }) => money?.labour?.amount ?? null,
        example: (scenario) => `30 ${currency(scenario)}/h`,
        isShared: true,
      },
    ],
  },
]

/** What `scenario` gives for its cost and cannot be used, in the order of the elements. What is 0 is not missed. */
export function droppedOf(scenario: Scenario): Dropped[] {
  return elements.flatMap(({ label, words, keys }) => {
    const amounts = keys.map((key) => key.amount(scenario))
    const isGiven = keys.some((key, index) => !key.isShared && (amounts[index] ?? 0) > 0)
    const missing = keys.filter((_, index) => amounts[index] === null)
    if (!isGiven || missing.length === 0) return []
    return [
      {
        leavesOut: label,
        words: words ?? label,
        given: keys.flatMap(({ path, isShared }, index) =>
          isShared || amounts[index] === null ? [] : [path],
        ),
        missing: missing.map((key) => ({
          path: key.path,
          words: key.words ?? `\`${key.path}\``,
          example: key.example(scenario),
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
