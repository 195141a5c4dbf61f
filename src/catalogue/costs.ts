/** The elements of what a shift costs, and the measures that are made of them. */
import { type Row, sorts } from './row.js'

interface Element {
  words: string
  meaning: string
  /** Paid by the shift, whatever it puts out; the others by the case. */
  isByShift?: true
}

/** By key, in the order of results. */
const elements = {
  tape: { words: 'tape', meaning: 'tape with its losses' },
  labour: { words: 'labour', meaning: 'people paid for the shift', isByShift: true },
  downtime: {
    words: 'stops of the sealers',
    meaning: 'hours in which a sealer stands for a stop of its own',
  },
  energy: { words: 'energy', meaning: 'mean power over the shift', isByShift: true },
  maintenance: { words: 'maintenance', meaning: 'a yearly share of what was bought', isByShift: true },
  capital: {
    words: 'capital recovery',
    meaning: 'what was bought, paid back over its life with interest',
    isByShift: true,
  },
  failures: { words: 'closures that open later', meaning: 'closures that open later, at what one costs' },
  'failure-repair': { words: 'closing those again', meaning: 'the work of closing those again' },
} as const satisfies Record<string, Element>

export type CostElement = keyof typeof elements
export const costElements: Readonly<Record<CostElement, Element>> = elements
export const costElementKeys = Object.keys(elements) as CostElement[]

/** Key of the measure of an element. */
export type CostKey = `cost-per-1000-${CostElement}`
export const costKey = (element: CostElement): CostKey => `cost-per-1000-${element}`
export const isCostKey = (key: string): key is CostKey => Object.hasOwn(ofElements, key)

/** The elements as measures of the line. */
export const ofElements = Object.fromEntries(
  Object.entries(elements).map(([key, { words, meaning }]) => [
    costKey(key as CostElement),
    { ...sorts.cost, label: `of it ${words}`, meaning },
  ]),
) as Record<CostKey, Row<string>>
