/** A value of a scenario as a file would have it in one line: `{mean: 3 s, cv: 0.4}`. */
export function flowText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flowText).join(', ')}]`
  if (typeof value !== 'object' || value === null) return String(value)
  return `{${Object.entries(value)
    .map(([key, each]) => `${key}: ${flowText(each)}`)
    .join(', ')}}`
}
