/** How people write "a shift" behind a number of something. */

/** Regular expression source. */
export const aShift = '(?:/|\\bper\\b|\\ban?\\b|\\bin a\\b|\\beach\\b)\\s*shift'
