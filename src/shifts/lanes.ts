/** Lanes side by side: as many as there are workers, who may come while work is on. */

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
