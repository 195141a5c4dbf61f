/** What is said while figures are on their way: what is being done, and why that takes long where it does. */
import type { CheckResult } from '../../../questions/check/document.js'
import { counted } from '../../../report/format.js'
import type { Line } from '../../data.js'
import { mostForFields } from '../../draft/lengths.js'

/** More kinds of case than this keep people waiting. */
const fewKinds = 1000

const isLong = 'this takes some seconds, up to a minute on a slow computer.'

/** Before the first figures; `check`: what is known of the line before it is simulated. */
export function firstWait(letters: number, check: CheckResult | null): string {
  if (!check && letters > mostForFields)
    return `The line is being read. Its text and files have ${thousands(letters)} letters: ${isLong}`
  const kinds = check ? kindsIn(check) : 0
  return kinds > fewKinds
    ? `The first shifts are being simulated. There are ${counted(kinds, 'kind')} of case: ${isLong}`
    : 'The first shifts are being simulated.'
}

/** After a change. */
export const nextWait = (letters: number): string =>
  letters > mostForFields
    ? `Simulating the change: to read ${thousands(letters)} letters again takes some seconds …`
    : 'Simulating the change …'

export const thousands = (letters: number): string => `${Math.round(letters / 1000)} thousand`

const kindsIn = ({ cases, otherCases }: CheckResult): number =>
  Object.keys(cases).length + (otherCases?.count ?? 0)

/** Letters of a text and of the files that travel with it. */
export const lettersIn = (text: string, { files }: Line): number =>
  Object.values(files).reduce((sum, each) => sum + each.length, text.length)
