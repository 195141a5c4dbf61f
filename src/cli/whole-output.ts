/** Standard output that is written to the last byte, or said not to be. */
import { fstatSync, writeSync } from 'node:fs'
import { Writable } from 'node:stream'

/**
 * What to write to in place of `stream`. Into a file Node hands each text to the system once: what a full disk does not take
 * of it is lost without an error. Here the rest is handed over again, so that the system says what is wrong.
 */
export function wholeOutput(
  stream: NodeJS.WriteStream & { fd: number },
): Writable & { isTTY?: boolean; columns?: number } {
  const { fd } = stream
  if (!fstatSync(fd).isFile()) return stream
  return new Writable({
    write(chunk: Buffer, _encoding, done) {
      try {
        for (let written = 0; written < chunk.length; ) written += writeSync(fd, chunk, written)
      } catch (error) {
        done(error as Error)
        return
      }
      done()
    },
  })
}
