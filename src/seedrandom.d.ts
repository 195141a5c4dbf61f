/** The part of the generator of random numbers that this project calls; its types leave it out. */
declare module 'seedrandom/lib/alea.js' {
  /** A generator of 32-bit resolution on [0, 1), seeded by a text. */
  export default function alea(seed: string): () => number
  export default function alea(
    seed: string,
    options: { state: true },
  ): { state(): { s0: number; s1: number; s2: number; c: number } }
}
