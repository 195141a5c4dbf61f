/** How well a figure of the trade is known: printed beside it wherever a person reads it. */

/**
 * `published` may be quoted with its source; `derived` follows from geometry, kinematics or algebra. The others are
 * assumptions to be edited, never norms; a `project rule` is a caution of this program.
 */
export type Basis =
  | 'published'
  | 'derived'
  | 'common practice, no source'
  | 'from memory, low confidence'
  | 'project rule'
