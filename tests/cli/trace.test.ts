/** `tapeshift trace` as its user meets it: the shift of the study, its filters, its two forms, and what it refuses. */

import { spawn } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { parse as parseCsv } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { call, smallLine } from './in-process.js'

type Line = Record<string, string | number>

const trace = (argv: string[], stdin = smallLine) => call(['trace', '-', ...argv], { stdin })

async function events(argv: string[], stdin = smallLine): Promise<Line[]> {
  const { out } = await trace(['--json', ...argv], stdin)
  return out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Line)
}

/** The events alone, without the first and the last line. */
const inner = (lines: Line[]) => lines.slice(1, -1)

describe('the row at the end of a trace', () => {
  it.each([
    ['of the base', []],
    ['of another seed', ['--seed', 'other']],
    ['with a change', ['--set', 'line.infeed.length=4 m']],
    ['of a variant', ['--variant', 'long']],
  ])('is the row of shifts.csv to the last digit, %s', async (_, more) => {
    const stdin = `${smallLine}variants: {long: {set: {line.infeed.length: 12 m}}}\n`
    const study = await call(['run', '-', '--shifts', '4', '--workers', '1', ...more], { stdin })
    const table = readFileSync(path.join(study.cwd, 'out/stdin-run/shifts.csv'), 'utf8')
    const [, ...rows] = parseCsv(table) as string[][]
    const columns = parseCsv(table, { columns: true }) as Record<string, string>[]
    for (const shift of [1, 3]) {
      const { shift: number, ...cells } = columns[shift - 1]!
      expect(number).toBe(String(shift))
      const last = (await events(['--shift', String(shift), ...more], stdin)).at(-1) as unknown as {
        event: string
        shift: number
        row: Record<string, number | null>
      }
      expect([last.event, last.shift]).toEqual(['row', shift])
      expect(
        Object.entries(last.row).map(([name, value]) => [name, value === null ? '' : String(value)]),
      ).toEqual(Object.entries(cells))
      const { out } = await trace(['--shift', String(shift), ...more], stdin)
      const text = out
        .slice(out.indexOf(`\nShift ${shift} as its row`))
        .trimEnd()
        .split('\n')
        .slice(2)
      expect(text.map((line) => line.split(/ {2,}/)[1] ?? '')).toEqual(rows[shift - 1]!.slice(1))
    }
    expect(new Set(rows.map((row) => row.join())).size).toBe(4)
  })

  it('stands there whatever is filtered away', async () => {
    const whole = await events(['--shift', '2'])
    const part = await events(['--shift', '2', '--case', '5', '--from', '59 min'])
    expect(part).toEqual([whole[0], whole.at(-1)])
  })
})

describe('the two forms', () => {
  it('JSON is one object a line with its keys in one order', async () => {
    const lines = await events(['--shift', '1'])
    expect(lines[0]).toMatchObject({
      event: 'trace',
      format: 'tapeshift-trace/1',
      seed: 'tapeshift',
      shift: 1,
    })
    const order = 'time event at case kind from state cause person task head tape lasts after as'.split(' ')
    const seen = new Set<string>()
    for (const line of inner(lines)) {
      const keys = Object.keys(line)
      expect(keys).toEqual(order.filter((key) => keys.includes(key)))
      expect(keys.slice(0, 3)).toEqual(['time', 'event', 'at'])
      seen.add(String(line.event))
    }
    // whether somebody waits at the infeed is a matter of chance
    seen.delete('waits')
    const names =
      'arrivals-end arrives freed jams leaves on-belts service-begins sets-out state stops strip-laid taken work-begins work-done'
    expect([...seen].sort()).toEqual(names.split(' '))
    expect((await trace(['--shift', '1', '--json'])).out).toBe((await trace(['--shift', '1', '--json'])).out)
  })

  it('text is a line an event with h:mm:ss.s, place and words', async () => {
    const { code, out, err } = await trace(['--shift', '1'])
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(
      /^Small line: shift 1 of seed tapeshift\ntapeshift \d+\.\d+\.\d+, scenario sha256 [0-9a-f]{64}\n\n/,
    )
    const lines = out.slice(0, out.indexOf('\n\nShift 1')).split('\n').slice(3)
    expect(lines).toHaveLength(inner(await events(['--shift', '1'])).length)
    for (const line of lines)
      expect(line).toMatch(/^ \d:\d\d:\d\d\.\d {2}(shift|p|infeed|sealer|end) +\S.*\S$/)
    expect(lines).toContain(' 1:00:00.0  shift   arrivals end')
    expect(out).toMatch(/ {2}p {7}case 1 \(a\) arrives\n/)
    expect(out).not.toMatch(/undefined|NaN|Infinity/)
  })

  it('tape is in inches where the scenario asks for it', async () => {
    const { out } = await trace(['--shift', '1', '--case', '1'], `${smallLine}display: us\n`)
    // 0.4 m and two legs of 70 mm
    expect(out).toContain('top head lays 21.3 in of tape on case 1')
  })

  it('a hostile title is text', async () => {
    const text = smallLine.replace('title: Small line', 'title: "\\u001b[31m red"')
    expect((await trace(['--shift', '1'], text)).out).not.toContain('\u001b')
  })
})

describe('filters', () => {
  it('--case follows one case and the stops of the piece that it is in', async () => {
    const jamming = smallLine.replace('chance: 1 %', 'chance: 30 %')
    const all = inner(await events(['--shift', '1'], jamming))
    const jammed = all.find(({ event }) => event === 'jams')!.case!
    const shown = inner(await events(['--shift', '1', '--case', String(jammed)], jamming))
    expect(shown.filter((event) => event.case === jammed)).toEqual(
      all.filter((event) => event.case === jammed),
    )
    expect(shown[0]).toMatchObject({ event: 'arrives', at: 'p', kind: 'a' })
    expect(shown.at(-1)).toMatchObject({ event: 'leaves', at: 'end', as: 'good' })
    const [enters, goes] = ['sealer', 'end'].map((at) =>
      shown.findIndex((each) => each.event === 'taken' && each.at === at),
    )
    const names = shown.slice(enters, goes).map(({ event }) => event)
    expect(names.join(' ')).toContain('jams stops sets-out work-begins work-done freed')
    for (const [index, event] of shown.entries())
      if (event.case === undefined) {
        expect(event.at).toBe('sealer')
        expect(index).toBeGreaterThan(enters!)
        expect(index).toBeLessThan(goes!)
      }
  })

  it('--equipment takes what happens there and what is handed on from there', async () => {
    const all = inner(await events(['--shift', '1']))
    const shown = inner(await events(['--shift', '1', '--equipment', 'infeed', 'end']))
    expect(shown).toEqual(
      all.filter(({ at, from }) => [at, from].some((name) => name === 'infeed' || name === 'end')),
    )
    expect(shown.some(({ at, from }) => at === 'sealer' && from === 'infeed')).toBe(true)
    const repeated = await events(['--shift', '1', '--equipment', 'infeed', '--equipment', 'end'])
    expect(inner(repeated)).toEqual(shown)
  })

  it('--from and --to are included, in any unit of time', async () => {
    const all = inner(await events(['--shift', '1']))
    const { time } = all[200]!
    const shown = inner(await events(['--shift', '1', '--from', `${time} s`, '--to', '0.5 h']))
    expect(shown).toEqual(
      all.filter((event) => Number(event.time) >= Number(time) && Number(event.time) <= 1800),
    )
    expect(shown[0]!.time).toBe(time)
  })

  it('hold together', async () => {
    const shown = inner(await events(['--shift', '1', '--case', '9', '--equipment', 'end', '--to', '1 h']))
    expect(shown.map(({ event }) => event)).toEqual(['taken', 'service-begins', 'leaves'])
  })
})

describe('bad input', () => {
  it.each([
    [[], "required option '--shift <N>' not specified"],
    [['--shift', '0'], 'whole number from 1 to 100000'],
    [['--shift', '1.5'], 'whole number from 1 to 100000'],
    [['--shift', '1', '--case', '0'], 'whole number from 1'],
    [
      ['--shift', '1', '--equipment', 'seler'],
      'there is no piece `seler` in the line; did you mean `sealer`?',
    ],
    [['--shift', '1', '--equipment', 'packing table'], 'allowed here: infeed, sealer, end'],
    [['--shift', '1', '--equipment', 'a\u001b[31m'], 'there is no piece `a·[31m`'],
    [['--shift', '1', '--from', '10'], '--from 10: a time needs a unit'],
    [['--shift', '1', '--to', '10 m'], '--to 10 m: `m` is a unit of a length'],
    [['--shift', '1', '--from', '-1 s'], '--from -1 s: a time of the shift counts from its start'],
    [
      ['--shift', '1', '--from', '2 min', '--to', '1 min'],
      '--from 2 min comes after --to 1 min: exchange the two',
    ],
    [['--shift', '1', '--from', '9 h'], '--from 9 h comes after the end, 1:00:00.0 from the start'],
  ])('%j is wrong usage: 2', async (argv, words) => {
    const { code, out, err } = await trace(argv)
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(words)
  })

  it('a case that never arrives is wrong usage, and the last one is named', async () => {
    const arrived = inner(await events(['--shift', '2'])).filter(({ event }) => event === 'arrives').length
    const { code, out, err } = await trace(['--shift', '2', '--case', '99999'])
    expect([code, out]).toEqual([2, ''])
    expect(err).toBe(
      `error: case 99999 never arrives in shift 2 of seed tapeshift; the last one is case ${arrived}: did you mean \`${arrived}\`?\n`,
    )
    const none = await trace(
      ['--shift', '1', '--case', '1'],
      smallLine.replace('{exponential: {mean: 6 s}}', '5 h'),
    )
    expect([none.code, none.out]).toEqual([2, ''])
    expect(none.err).toContain('no case arrives')
  })

  it('an invalid scenario ends with 3', async () => {
    const { code, out } = await trace(['--shift', '1'], smallLine.replace('400 mm', '400'))
    expect([code, out]).toEqual([3, ''])
  })
})

describe('a long trace', () => {
  const long = smallLine.replace('length: 1 h', 'length: 4000 h')

  it('stops at an interrupt with exit code 130', async () => {
    const { code, err } = await call(['trace', '-', '--shift', '1', '--case', '1'], {
      stdin: long,
      interruptAfter: 50,
    })
    expect(code).toBe(130)
    expect(err).toMatch(/^interrupted at \d+:\d\d:00\.0 of the shift\n$/)
  })

  it('ends quietly and soon when its reader has had enough', async () => {
    const { cwd } = await call(['--help'])
    writeFileSync(path.join(cwd, 'line.yaml'), long)
    const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
    const child = spawn('sh', ['-c', `node ${program} trace line.yaml --shift 1 | head -n 5`], { cwd })
    let [out, err] = ['', '']
    child.stdout.on('data', (data: Buffer) => {
      out += data.toString()
    })
    child.stderr.on('data', (data: Buffer) => {
      err += data.toString()
    })
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect([code, err]).toEqual([0, ''])
    expect(out.split('\n')).toHaveLength(6)
  })
})

describe('work beside the line and planned work', () => {
  // hours are long enough for each of these once: other work at 10 and 30 min, cleaning at 15, a test at 40, handovers of 2 min
  const text = `title: People
cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 20 min}}
line:
  bench:
    type: station
    time: 5 s
    run-by: people
    handover: 2 min
    planned: [{does: cleaning, at: 15 min, takes: 3 min, needs: o}, {does: self-test, at: 40 min, takes: 30 s}]
crew: {o: {walk: 10 s, does: [jams], other-work: {does: labels, every: 12 min, takes: 5 min, can-be-left: true}}}
shift: {length: 1 h}
`

  it('are told in sentences', async () => {
    const { out } = await trace(['--shift', '1'], text)
    const lines = out.slice(0, out.indexOf('\n\nShift 1')).split('\n').slice(3)
    const people = lines.filter((line) => !/case|state/.test(line))
    expect(people.map((line) => line.replace(/ {2,}/g, ' ').trim())).toEqual([
      '0:00:00.0 bench handover of the shift: nobody works here',
      '0:02:00.0 bench the handover is over',
      '0:12:00.0 crew.o other work is due, 5 min of it: labels',
      '0:12:00.0 crew.o o begins with other work, for 5 min: labels',
      '0:15:00.0 crew.o o leaves other work, 2 min of it to do: labels',
      '0:15:00.0 bench o sets out: cleaning',
      '0:15:10.0 bench o is there and begins, for 3 min: cleaning',
      '0:18:10.0 bench o is done: cleaning',
      '0:18:10.0 crew.o o begins with other work, for 2 min: labels',
      '0:20:10.0 crew.o o is done with other work: labels',
      '0:24:00.0 crew.o other work is due, 5 min of it: labels',
      '0:24:00.0 crew.o o begins with other work, for 5 min: labels',
      '0:29:00.0 crew.o o is done with other work: labels',
      '0:36:00.0 crew.o other work is due, 5 min of it: labels',
      '0:36:00.0 crew.o o begins with other work, for 5 min: labels',
      '0:40:00.0 bench planned work begins, for 30 s: self-test',
      '0:40:30.0 bench planned work is done: self-test',
      '0:41:00.0 crew.o o is done with other work: labels',
      '0:48:00.0 crew.o other work is due, 5 min of it: labels',
      '0:48:00.0 crew.o o begins with other work, for 5 min: labels',
      '0:53:00.0 crew.o o is done with other work: labels',
      '0:58:00.0 bench handover of the shift: nobody works here',
      '1:00:00.0 shift arrivals end',
      '1:00:00.0 crew.o other work is due, 5 min of it: labels',
      '1:00:00.0 crew.o o begins with other work, for 5 min: labels',
    ])
  })

  it('stand in JSON with who, what and how long', async () => {
    const told = inner(await events(['--shift', '1'], text))
    expect(told.find(({ event }) => event === 'other-work-left')).toEqual({
      time: 900,
      event: 'other-work-left',
      at: 'crew.o',
      person: 'o',
      task: 'labels',
      lasts: 120,
    })
    expect(told.find(({ event }) => event === 'planned-work')).toMatchObject({
      time: 910,
      at: 'bench',
      person: 'o',
      task: 'cleaning',
      lasts: 180,
    })
  })
})
