#!/usr/bin/env node
/** The program: hands arguments and streams to `main`, and ends with its exit code. */
import { exits, type Io } from './io.js'
import { main } from './program.js'

// a reader that closes the pipe early has had enough: no error
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(exits.done)
    throw error
  })

const io: Io = {
  stdin: process.stdin,
  stdout: process.stdout,
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
