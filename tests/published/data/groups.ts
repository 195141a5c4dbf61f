/** Small public data in groups. */

/** Smoothness of paper, four laboratories. Scholz & Stephens, J. Am. Stat. Assoc. 82 (1987) 918-924. */
export const paperSmoothness = [
  [38.7, 41.5, 43.8, 44.5, 45.5, 46.0, 47.7, 58.0],
  [39.2, 39.3, 39.7, 41.4, 41.8, 42.9, 43.3, 45.8],
  [34.0, 35.0, 39.0, 40.0, 43.0, 43.0, 44.0, 45.0],
  [34.0, 34.8, 34.8, 35.4, 37.2, 37.8, 41.2, 42.8],
]

/**
 * Ozone in New York, parts in 10^9, May to September 1973, days on which it was measured. Chambers and others, Graphical Methods for Data Analysis (1983);
 * data set `airquality` of R.
 */
export const ozoneByMonth = [
  [41, 36, 12, 18, 28, 23, 19, 8, 7, 16, 11, 14, 18, 14, 34, 6, 30, 11, 1, 11, 4, 32, 23, 45, 115, 37],
  [29, 71, 39, 23, 21, 37, 20, 12, 13],
  [135, 49, 32, 64, 40, 77, 97, 97, 85, 10, 27, 7, 48, 35, 61, 79, 63, 16, 80, 108, 20, 52, 82, 50, 64, 59],
  [39, 9, 16, 78, 35, 66, 122, 89, 110, 44, 28, 65, 22, 59, 23, 31, 44, 21, 9, 45, 168, 73, 76, 118, 84, 85],
  [
    96, 78, 73, 91, 47, 32, 20, 23, 21, 24, 44, 21, 28, 9, 13, 46, 18, 13, 24, 16, 13, 23, 36, 7, 14, 30, 14,
    18, 20,
  ],
]

/** Insects on plots under six sprays. Beall, Biometrika 32 (1942) 243-262; data set `InsectSprays` of R. */
export const insectsBySpray = [
  [10, 7, 20, 14, 14, 12, 10, 23, 17, 20, 14, 13],
  [11, 17, 21, 11, 16, 14, 17, 17, 19, 21, 7, 13],
  [0, 1, 7, 2, 3, 1, 2, 1, 3, 0, 1, 4],
  [3, 5, 12, 6, 4, 3, 5, 5, 5, 5, 2, 4],
  [3, 5, 3, 5, 3, 6, 1, 1, 3, 2, 6, 4],
  [11, 9, 15, 22, 15, 16, 13, 10, 26, 26, 24, 13],
]

/** Hours of sleep gained by ten patients under two drugs. Student, Biometrika 6 (1908) 1-25; data set `sleep` of R. */
export const sleepByDrug = [
  [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2],
  [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
]
