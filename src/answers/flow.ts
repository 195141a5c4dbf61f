/** Values of a scenario as a file would have them, in one line. */

/** A value of a scenario as a file would have it in one line: `{mean: 3 s, cv: 0.4}`. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`
  if (typeof value !== 'object' || value === null) return String(value)
  return `{${Object.entries(value)
    .map(([key, each]) => `${key}: ${flowText(each)}`)
    .join(', ')}}`
}

/** Changes of a scenario: `belt.length = 5 m, crew.people = 2`. */
export const changesText = (set: Record<string, unknown>, between = ', '): string =>
  Object.entries(set)
    .map(([path, value]) => `${path} = ${flowText(value)}`)
    .join(between)
