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
  labour: { words: 'labour', meaning: 'wages of the people, for the shift', isByShift: true },
  downtime: {
    words: 'stops of the sealers',
    meaning: 'hours in which a sealer is down for a stop of its own',
  },
  energy: { words: 'energy', meaning: 'mean power over the shift', isByShift: true },
  maintenance: { words: 'maintenance', meaning: 'a yearly share of the purchase price', isByShift: true },
  capital: {
    words: 'capital recovery',
    meaning: 'the purchase price, spread over the life of the equipment with interest',
    isByShift: true,
  },
  failures: { words: 'closures that open later', meaning: 'closures that open later, times the cost of one' },
  'failure-repair': { words: 'closing those again', meaning: 'the labour of closing those cases again' },
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
    { ...sorts.cost, label: `of which ${words}`, meaning },
  ]),
) as Record<CostKey, Row<string>>
