#!/usr/bin/env node
/** The program: hands arguments and streams to `main`, and ends with its exit code. */
import { setFlagsFromString } from 'node:v8'
import { exits, type Io } from './io.js'
import { main } from './program.js'
import { reason } from './text.js'
import { wholeOutput } from './whole-output.js'

// what is done with is collected when it is half of what is in use: where a machine has much memory, three times that would lie about
setFlagsFromString('--heap-growing-percent=50')
// a function runs longer before it is compiled for speed: most of what a command does it does once, and what simulates comes to that at once
setFlagsFromString('--interrupt-budget=400000')

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
