/** The part of the statistics library that this project calls; the package ships no types of its own. */
declare module 'jstat' {
  const jStat: {
    studentt: { inv(p: number, degreesOfFreedom: number): number }
    normal: {
      inv(p: number, mean: number, sd: number): number
      cdf(x: number, mean: number, sd: number): number
    }
    chisquare: { inv(p: number, degreesOfFreedom: number): number }
    beta: { inv(p: number, a: number, b: number): number }
    /** Regularised incomplete beta function I_x(a, b). */
    ibeta(x: number, a: number, b: number): number
    gamma: { inv(p: number, shape: number, scale: number): number }
    gammafn(x: number): number
    /** Logarithm of the gamma function. */
    gammaln(x: number): number
  }
  export default jStat
}

declare module 'seedrandom/lib/alea.js' {
  /** A generator of 32-bit resolution on [0, 1), seeded by a text. */
  export default function alea(seed: string): () => number
  export default function alea(
    seed: string,
    options: { state: true },
  ): { state(): { s0: number; s1: number; s2: number; c: number } }
}
