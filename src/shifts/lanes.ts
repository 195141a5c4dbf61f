/** Lanes side by side: as many as there are workers, who may come while work is on, or a number that stays. */

/**
 * Runs `size()` lanes while `hasMore()`; each opens further ones by the function that it is given. Ends when all have ended, or with
 * the first that fails.
 */
export function inLanes(
  size: () => number,
  hasMore: () => boolean,
  lane: (openMore: () => void) => Promise<void>,
): Promise<void> {
  let lanes = 0
  return new Promise<void>((resolve, reject) => {
    const openMore = (): void => {
      while (lanes < size() && hasMore()) {
        lanes++
        lane(openMore).then(() => --lanes === 0 && resolve(), reject)
      }
    }
    openMore()
    if (lanes === 0) resolve()
  })
}

/** What comes of `work` for each of the numbers below `count`, in their order; so many are in hand at once. */
export async function inOrder<T>(
  count: number,
  atOnce: number,
  work: (number: number) => Promise<T>,
): Promise<T[]> {
  const results: T[] = []
  let next = 0
  const lane = async (): Promise<void> => {
    while (next < count) {
      const number = next++
      results[number] = await work(number)
    }
  }
  await Promise.all(Array.from({ length: atOnce }, lane))
  return results
}
