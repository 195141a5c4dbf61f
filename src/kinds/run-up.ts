/** What a start from rest costs a drive that does not come to its speed at once. */

/** Keys of a drive. */
export interface DriveKeys {
  acceleration?: number | undefined
}

/**
 * Time that a start from rest to `speed`, m/s, loses against a drive that is at its speed at once, s: v / 2a at the even acceleration a. From v / a on
 * the travel of both is the same: v (t - v / 2a).
 */
export const runUpOf = ({ acceleration }: DriveKeys, speed: number): number =>
  acceleration === undefined ? 0 : speed / (2 * acceleration)
