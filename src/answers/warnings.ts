/** The head of every report: what must be known before its figures are read, and how sentences beside it say the same in one breath. */

import { counted, listed, sentences } from '../report/format.js'
import type { Head } from '../report/report.js'
import type { Warned, Warning } from './warning.js'

/** The errors at the head of a document. */
export const errorsOf = ({ warnings = [] }: Warned) => warnings.filter(({ severity }) => severity === 'error')

/** Designs that are named before the rest is counted. */
const mostNamed = 3

/** `base, three-inch and 4 more`. */
const few = (names: readonly string[]): string =>
  names.length <= mostNamed + 1
    ? listed(names)
    : `${names.slice(0, mostNamed).join(', ')} and ${names.length - mostNamed} more`

/** `The line cannot work as described: check finds 52 errors.`, or who of the designs cannot. */
export function titleOf(errors: readonly Warning[]): string {
  const designs = [...new Set(errors.flatMap((each) => each.designs))]
  const found = `check finds ${counted(
    errors.reduce((sum, { count }) => sum + count, 0),
    'error',
  )}`
  return designs.length === 0
    ? `The line cannot work as described: ${found}.`
    : `Cannot work as described: ${few(designs)}; ${found}.`
}

/** The head of a document; null where there is nothing to be known. */
export function headOf(result: Warned): Head | null {
  const { warnings = [] } = result
  if (warnings.length === 0) return null
  const errors = errorsOf(result)
  return {
    title:
      errors.length > 0
        ? `${titleOf(errors)} The figures below ignore this.`
        : 'The cost leaves out a price that the scenario gives.',
    lines: warnings.map((each) => lineOf(each, errors)),
  }
}

function lineOf(warning: Warning, errors: readonly Warning[]): string {
  const { severity, code, text, fix, count, paths, designs, differs } = warning
  // the title names the designs of all errors
  const isSaid = severity === 'error' && errors.length === 1
  const where = designs.length > 0 && !isSaid ? `, in ${few(designs)}` : ''
  const often = count > 1 ? `, ${count} times, worst at ${listed(paths.map((path) => `\`${path}\``))}` : ''
  const unlike = differs ? ' The designs differ in it, so their costs do not say which one is cheaper.' : ''
  return `${severity} ${code}${where}${often}: ${text}${unlike} Fix: ${fix}.`
}

/** Whether `check` calls a design an error; without a name, whichever the document is of. */
export const cannotWork = (result: Warned, design?: string): boolean =>
  errorsOf(result).some(({ designs }) => design === undefined || designs.includes(design))

/** `, but the line cannot work as described: the roll is larger than the drum`; empty where it can. */
export function butCannotWork(result: Warned, who = 'the line'): string {
  const errors = errorsOf(result)
  if (errors.length === 0) return ''
  const reasons = errors.map(({ meaning }) => meaning)
  return `, but ${who} cannot work as described: ${reasons.slice(0, mostNamed).join('; ')}`
}

/** The same without the reasons, where there is little room. */
export const suffixCannotWork = (result: Warned): string =>
  cannotWork(result) ? ', but the line cannot work as described' : ''

/** `three-inch (cannot work as described)`. */
export const withVerdict = (design: string, result: Warned): string =>
  cannotWork(result, design) ? `${design} (cannot work as described)` : design

/** Elements of cost that are given in part and left out, in words; empty where there are none. */
const leftOutWords = ({ warnings = [] }: Warned): string =>
  listed(warnings.flatMap(({ leavesOut }) => leavesOut ?? []))

/** `Cost of 1000 cases without capital recovery`: whatever is left out of the cost is said with it. */
export const costWords = (words: string, result: Warned): string => {
  const leftOut = leftOutWords(result)
  return leftOut === '' ? words : `${words} without ${leftOut}`
}

/** Elements that a cost leaves out: those that nobody priced, and those that are priced in part. */
export function leftOutNote(elements: readonly string[], { warnings = [] }: Warned): string {
  const inPart = elements.filter((each) => warnings.some(({ leavesOut }) => leavesOut === each))
  const unpriced = elements.filter((each) => !inPart.includes(each))
  return sentences(
    unpriced.length > 0 && `Not included, because the scenario gives no price: ${unpriced.join(', ')}.`,
    inPart.length > 0 && `Not included, because a price or quantity is missing: ${inPart.join(', ')}.`,
  ).join(' ')
}

/** Whether designs differ in a price that their cost leaves out: then no title names a cheapest. */
export const isCostInPart = ({ warnings = [] }: Warned): boolean => warnings.some(({ differs }) => differs)

/** Prices that are left out and in which the designs differ: what that says of any advice by cost; empty where there are none. */
export function besideCost({ warnings = [] }: Warned): string {
  const unlike = warnings.filter(({ differs }) => differs)
  if (unlike.length === 0) return ''
  const given = unlike.flatMap((each) => (each.given ?? []).map((path) => `\`${path}\``))
  const missing = unlike.flatMap((each) => (each.missing ?? []).map((path) => `\`${path}\``))
  return `The cost leaves out ${leftOutWords({ warnings: unlike })}, in which these designs differ (${listed([...new Set(given)])} without ${listed([...new Set(missing)])}), so it does not show which one is cheapest.`
}
