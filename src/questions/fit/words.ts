/** Words of a fit: families, exposures, lengths. */
import type { FittedInput, TestResult } from './document.js'

/** Each family as it is called in a sentence. */
export const familyWords = {
  exponential: 'exponential',
  weibull: 'Weibull',
  gamma: 'gamma',
  lognormal: 'lognormal',
  mixture: 'two lognormals',
} as const

/** How an exposure is drawn: word and size of its unit, and what rates are told of. */
export function exposureAxis(unit: string): { word: string; size: number; per: number; perWord: string } {
  switch (unit) {
    case 's':
      return { word: 'running hours', size: 3600, per: 3600, perWord: 'an hour of running' }
    case 'strips':
      return { word: '1000 strips', size: 1000, per: 1000, perWord: 'per 1000 strips' }
    case 'cases':
      return { word: '1000 cases', size: 1000, per: 1000, perWord: 'per 1000 cases' }
    default:
      return { word: unit, size: 1, per: 1, perWord: `a ${unit}` }
  }
}

/** Is one of these tests of the input shown? */
export const isShown = ({ tests }: FittedInput, ...which: TestResult['test'][]): boolean =>
  tests.some(({ test, isShown: shown }) => shown && which.includes(test))

/** What an input is called at the head of a picture. */
export const headed = ({ words }: FittedInput): string => words.charAt(0).toUpperCase() + words.slice(1)

export const hasValue = ({ value }: FittedInput): boolean => value !== null

/** Is the reader told that it rests on few events, or on none? */
export const hasFewEvents = ({ remarks }: FittedInput): boolean =>
  remarks.some(({ code }) => code === 'few' || code === 'none-seen')

/** Ends of a straight line of a picture. */
export const fromOrigin = (x: number, y: number) => [
  { x: 0, y: 0 },
  { x, y },
]
