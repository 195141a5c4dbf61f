/** What may be written into fields of several parts that are not given: an example to begin with, by the key that it is of. */

/** By the last key of a path, or the last two. All are invented, but for the widths of tape: a sealer for 2-inch tape takes these by default. */
export const examples: Readonly<Record<string, string>> = {
  breaks: '[{at: 2 h, for: 15 min}, {at: 4 h, for: 30 min}]',
  'other-work': '[{does: cartons, every: 20 min, takes: 3 min}]',
  planned: '[{does: cleaning, at: 4 h, takes: 10 min}]',
  'by-hour': '[100 %, 100 %, 97 %, 93 %]',
  'by-hour.cases': '[540 cases/h, 720 cases/h, 660 cases/h]',
  'applies-at': '[5 degC, 40 degC]',
  'site.temperature': '[10 degC, 30 degC]',
}

/** The example for the field at `path`; null where there is none that suits every line. */
export function exampleFor(path: string): string | null {
  const steps = path.split('.')
  const known = [steps.slice(-2).join('.'), steps.at(-1)!].find((key) => Object.hasOwn(examples, key))
  return known === undefined ? null : examples[known]!
}
