/** The lock of a folder in the instant in which it is made: a process that has not yet said who it is has not gone. */
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { lock } from '../../src/cli/lock.js'

const file = () => path.join(mkdtempSync(path.join(tmpdir(), 'tapeshift-lock-')), 'lock')

/** Makes a lock, says after 150 ms whose it is, and runs on. */
const slow = `
const { openSync, writeSync } = require('node:fs')
const lock = openSync(process.argv[1], 'wx')
setTimeout(() => writeSync(lock, JSON.stringify({ pid: process.pid, host: require('node:os').hostname(), begun: null })), 150)
setTimeout(() => {}, 60_000)`

it('is not taken over while its maker is about to write into it', async () => {
  const name = file()
  const maker = spawn(process.execPath, ['-e', slow, name], { stdio: 'ignore' })
  try {
    while (!existsSync(name)) await setTimeout(1)
    expect(() => lock(name)).toThrow(`another study is running in this folder: process ${maker.pid}`)
    expect(JSON.parse(readFileSync(name, 'utf8')).pid).toBe(maker.pid)
  } finally {
    maker.kill('SIGKILL')
  }
})

it('is taken over where its maker ended in that instant', () => {
  const name = file()
  writeFileSync(name, '')
  const release = lock(name)
  expect(JSON.parse(readFileSync(name, 'utf8')).pid).toBe(process.pid)
  release()
  expect(existsSync(name)).toBe(false)
})
