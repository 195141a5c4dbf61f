/** Short sets of times of the literature. */

/** 46 active repair times of an airborne transceiver, h: von Alven, Reliability Engineering (1964); Chhikara & Folks, Technometrics 19 (1977) 461-468. */
export const transceiverRepairs: readonly number[] = [
  0.2, 0.3, 0.5, 0.5, 0.5, 0.5, 0.6, 0.6, 0.7, 0.7, 0.7, 0.8, 0.8, 1, 1, 1, 1, 1.1, 1.3, 1.5, 1.5, 1.5, 1.5,
  2, 2, 2.2, 2.5, 2.7, 3, 3, 3.3, 3.3, 4, 4, 4.5, 4.7, 5, 5.4, 5.4, 7, 7.5, 8.8, 9, 10.3, 22, 24.5,
]

/** 12 times between failures of air conditioning, h: Proschan, Technometrics 5 (1963) 375-383. */
export const airConditioning: readonly number[] = [3, 5, 7, 18, 43, 85, 91, 98, 100, 130, 230, 487]

/** Failures of ten of 20 units that were on test for 500 h: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3. */
export const unitsOnTest: { failed: readonly number[]; end: number; survived: number } = {
  failed: [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
  end: 500,
  survived: 10,
}

/** Ten strengths: Lockhart & Stephens, J. R. Stat. Soc. B 56 (1994) 491-500. */
export const strengths: readonly number[] = [225, 171, 198, 189, 189, 135, 162, 135, 117, 162]
