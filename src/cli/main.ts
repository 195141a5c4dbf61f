#!/usr/bin/env node
/** The program: hands arguments and streams to `main`, and ends with its exit code. */
import { fstatSync, writeSync } from 'node:fs'
import { Writable } from 'node:stream'
import { setFlagsFromString } from 'node:v8'
import { exits, type Io } from './io.js'
import { main } from './program.js'
import { reason } from './reason.js'

// what is done with is collected when it is half of what is in use: where a machine has much memory, three times that would lie about
setFlagsFromString('--heap-growing-percent=50')

const stdout = wholeOutput(process.stdout)

for (const stream of [stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // a reader that closes the pipe early has had enough: no error
    if (error.code === 'EPIPE') process.exit(exits.done)
    if (stream === stdout) process.stderr.write(`error: cannot write standard output: ${reason(error)}\n`)
    process.exit(exits.file)
  })

const io: Io = {
  stdin: process.stdin,
  stdout,
  stderr: process.stderr,
  env: process.env,
  cwd: process.cwd(),
  onInterrupt(listener) {
    let isSecond = false
    const onSignal = () => {
      if (isSecond) process.exit(exits.interrupted)
      isSecond = true
      listener()
    }
    process.on('SIGINT', onSignal)
    return () => process.off('SIGINT', onSignal)
  },
}

process.exitCode = await main(process.argv.slice(2), io)

/**
 * What to write to in place of `stream`. Into a file Node hands each text to the system once: what a full disk does not take
 * of it is lost without an error. Here the rest is handed over again, so that the system says what is wrong.
 */
function wholeOutput(
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
