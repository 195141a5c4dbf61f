/**
 * A time or a length that has no value before its shift begins. Not 0: a field that begins as a whole number and comes to hold
 * a fraction changes the layout of its objects, and what was compiled for them is thrown away in the middle of the first
 * shifts.
 */
export const unset = Number.NaN
