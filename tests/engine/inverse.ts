/** The quantile function that draws of a law go by: what they give for a number that is given, not drawn. */
import { drawsOf, type Law } from '../../src/engine/variates.js'

/** The value below which the share `u` of the law lies; `u` on (0, 1). */
export function inverse(law: Law): (u: number) => number {
  const given = { value: Number.NaN, advance() {} }
  const draws = drawsOf(law, () => given)
  return (u) => {
    given.value = u
    return draws.draw()
  }
}
