/** The rule of a triangular law, of times and of sizes alike. */

export const inOrder = ({ low, mode, high }: { low: number; mode: number; high: number }): boolean =>
  low <= mode && mode <= high && low < high

/** What is told where they are not. */
export const outOfOrder = {
  message: 'low, mode and high must be in this order',
  params: { code: 'conflict', fix: 'put the smallest value in low and the largest in high' },
}
