/** What people of a crew can be called for. Apart from the schema, which no thread that simulates loads. */
export const skills = ['jams', 'roll-change', 'size-setting', 'blade', 'breakdowns'] as const
export type Skill = (typeof skills)[number]

/** What somebody may be called for: a task in the words of `does`, or jams that are left to the crew of that name. */
export type Call = Skill | `jams by ${string}`

/** The call of a jam that the crew `by` clears; undefined: whoever does `jams`. */
export const jamsBy = (by: string | undefined): Call => (by === undefined ? 'jams' : `jams by ${by}`)

/** All that the crew `name` may be called for, the most urgent first: jams left to it stand before its other jams, or last. */
export function callsOf(name: string, does: readonly Skill[]): Call[] {
  const jams = does.indexOf('jams')
  const at = jams < 0 ? does.length : jams
  return [...does.slice(0, at), jamsBy(name), ...does.slice(at)]
}

/** Such a call in the words of `does`. */
export const taskOf = (call: Call): string => (call.startsWith(jamsBy('')) ? 'jams' : call)
