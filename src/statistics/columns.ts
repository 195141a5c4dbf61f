/** Columns of numbers of one length, as least squares is made of them. */

/** Sum of products, as far as `a` goes. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let total = 0
  for (let index = 0; index < a.length; index++) total += a[index]! * b[index]!
  return total
}

/** Takes what lies along a column of length 1 off `rest`; returns how much that was. */
export function takeOff(rest: Float64Array | number[], unit: ArrayLike<number>): number {
  const along = dot(rest, unit)
  for (let row = 0; row < rest.length; row++) rest[row]! -= along * unit[row]!
  return along
}
