/** A map of names to values, as YAML and JSON have it: no list, and not nothing. */
export const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
