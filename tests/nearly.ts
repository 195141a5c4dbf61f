/** Numbers that are alike but for a share of their size. */
import { expect } from 'vitest'

/** `found` differs from `known` by at most the share `share` of it. */
export function nearly(found: number, known: number, share: number): void {
  expect(Math.abs(found - known), `${found} for ${known}`).toBeLessThanOrEqual(share * Math.abs(known))
}
