/** Paths into a scenario, written with dots, such as `line.sealer.jams`: what lies within what. */

/** Does a path lead to what stands at another, or into it? */
export const isWithin = (path: string, outer: string): boolean =>
  path === outer || path.startsWith(`${outer}.`)
