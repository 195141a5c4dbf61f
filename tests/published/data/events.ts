/** Small public data of events and their order. */

/**
 * Deaths by horse kicks in ten corps of the Prussian army over twenty years, without the four odd corps: how many corps-years had 0, 1, 2, ... of them.
 * L. von Bortkiewicz, Das Gesetz der kleinen Zahlen (1898).
 */
export const horseKicks = [109, 65, 22, 3, 1]

/** Repairs of a system, h from the begin of its test, which ended at 1500 h. NIST/SEMATECH e-Handbook of Statistical Methods, sec. 8.2.2.3 and 8.2.3.4. */
export const repairs = { times: [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478], end: 1500 }

/** Luteinising hormone in blood, 48 samples at intervals of 10 min. Diggle, Time Series: a Biostatistical Introduction (1990); data set `lh` of R. */
export const hormone = [
  2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2, 1.9, 1.7, 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9, 1.8,
  2.7, 3, 2.3, 2, 2, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7, 1.5, 1.4, 2.1, 3.3, 3.5, 3.5, 3.1, 2.6, 2.1,
  3.4, 3, 2.9,
]
