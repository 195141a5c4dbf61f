/** A map of names to values, as YAML and JSON have it: no list, and not nothing. */
export const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Of what stands in a map all that are maps, by their names; nothing of what is no map. */
export const mapsIn = (value: unknown): [name: string, map: Record<string, unknown>][] =>
  Object.entries(isMap(value) ? value : {}).flatMap(([name, each]) => (isMap(each) ? [[name, each]] : []))
