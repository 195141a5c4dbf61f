/** Lines that come to a standstill by their own design: who waits for whom, and what is none. */

import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { DeadlockError, EndlessLoopError } from '../../src/line/standstill.js'
import { call } from '../cli/in-process.js'
import { tell } from './story.js'

const head = (between: string, length = 100) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: ${between}}}
shift: {length: ${length} s}
`

/** Desk and look hold one case each; every case is rejected back to the desk. */
const locking = `${head('4 s')}line:
  desk: {type: station, time: 3 s}
  look: {type: inspect, time: 1 s, chance: 100 %, rejects-to: desk}
`

function failure(text: string): unknown {
  try {
    tell(text)
  } catch (error) {
    return error
  }
  return null
}

describe('a line that locks', () => {
  it('ends with who waits for whom, and since when', () => {
    // case 1: desk 4-7, look 7-8, back at the free desk 8-11, look 11-12. Case 2 waits from 8 and is taken at 11; so case 1
    // finds the desk full at 12, and case 2 is done at 14 and finds the look full
    const error = failure(locking) as DeadlockError
    expect(error).toBeInstanceOf(DeadlockError)
    expect(error.circle).toEqual(['desk', 'look'])
    expect(error.message).toContain('`desk` waits for `look`, `look` waits for `desk`')
    expect(error.message).toContain('in shift 1 of seed "test"')
    expect(error.since).toBe(14)
  })

  it('does so when a piece waits for several, all of which are locked', () => {
    const error = failure(`${head('1 s', 500)}line:
  in: {type: station, time: 1 s}
  split: {type: divert, rule: shortest, to: [a, b]}
  a: {type: station, time: 1 s, to: look}
  b: {type: station, time: 1 s, to: look}
  look: {type: inspect, chance: 100 %, rejects-to: in}
`) as DeadlockError
    expect(error).toBeInstanceOf(DeadlockError)
    expect(error.circle.length).toBeGreaterThanOrEqual(3)
    expect(error.circle).toContain('split')
  })

  it('is none where a long stop merely holds the line up to the end of the shift', () => {
    const story = tell(`${head('4 s')}line:
  desk: {type: station, time: 3 s}
  look: {type: inspect, time: 1 s, breakdowns: {after: 5 s, repair: 10 h}}
`)
    expect(story.read('equipment.desk.states.blocked')).toBeGreaterThan(0.5)
  })

  it('is none where a loop has room enough', () => {
    const story = tell(`${head('4 s')}line:
  desk: {type: station, time: 3 s, waiting-room: unlimited, to: look}
  look: {type: inspect, time: 1 s, chance: 100 %, rejects-to: desk}
`)
    expect(story.read('measures.output')).toBe(0)
  })

  it('is a finding about the scenario on the command line: 3', async () => {
    const { code, out, err } = await call(
      ['run', '-', '--no-files', '--shifts', '9', '--seed', 's', '--workers', '1'],
      { stdin: locking },
    )
    expect([code, out]).toEqual([3, ''])
    expect(err).toContain('line.desk: the line is locked in shift 1 of seed "s" from ')
    expect(err).toContain('`desk` waits for `look`, `look` waits for `desk`')
    expect(err).toContain('fix:')
    expect(err).not.toContain('bug')
  })

  it('is told alike by any number of workers of the built program', () => {
    const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
    const told = ['1', '3'].map((workers) => {
      const options = ['--no-files', '--shifts', '30', '--workers', workers]
      const { status, stderr } = spawnSync('node', [program, 'run', '-', ...options], {
        input: locking,
        encoding: 'utf8',
      })
      return { status, finding: stderr.slice(stderr.indexOf('line.desk')) }
    })
    expect(told[0]!.status).toBe(3)
    expect(told[0]!.finding).toContain('the line is locked in shift 1 of seed "tapeshift"')
    expect(told[1]).toEqual(told[0])
  })
})

describe('cases that run in a circle without time passing', () => {
  // the way round holds no case when the divert looks, as the way out does, and it is named first
  const circle = `${head('4 s')}line:
  split: {type: divert, rule: shortest, to: [back, exit]}
  back: {type: station, time: 0 s, to: split}
`

  it('are told, with the pieces that they run through', () => {
    const error = failure(circle) as EndlessLoopError
    expect(error).toBeInstanceOf(EndlessLoopError)
    expect(error.message).toContain('at 4 s: ')
    expect(error.message).toContain('`split`')
    expect(error.message).toContain('`back`')
  })

  it('are a finding about the scenario: 3', async () => {
    const { code, err } = await call(['run', '-', '--no-files', '--shifts', '2', '--workers', '1'], {
      stdin: circle,
    })
    expect(code).toBe(3)
    expect(err).toContain('cases run in a circle without time passing')
  })

  it('are none where the circle takes a time', () => {
    const story = tell(circle.replace('time: 0 s', 'time: 1 s'))
    expect(story.read('equipment.split.measures.to-back')).toBeGreaterThan(0)
  })
})
