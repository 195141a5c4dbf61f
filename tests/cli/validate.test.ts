/** `tapeshift validate`: what it takes and refuses, its exit codes, and what it writes. */
import { execFile } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { beforeAll, describe, expect, it } from 'vitest'
import { lineOf } from '../../src/cli/journal-lines.js'
import { plantKeys, plantLine, plantTexts } from '../questions/plant-days.js'
import { recordText } from '../record/texts.js'
import { call } from './in-process.js'
import { interrupted, journalOf, keptIn } from './interrupting.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))

const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-validate-'))
const file = (name: string) => path.join(cwd, name)
const read = (name: string) => readFileSync(file(name), 'utf8')

/** Calls it on the plant; one worker: threads take longer to load than these shifts. */
const validate = (...more: string[]) =>
  call(['validate', 'line.yaml', 'plant.yaml', '--runs', '39', '--workers', '1', ...more], { cwd })

beforeAll(() => {
  const { shifts, stops } = plantTexts(plantLine(), 8)
  const files = {
    'line.yaml': plantLine(),
    'wrong.yaml': plantLine('4 %'),
    'plant.yaml': recordText(plantKeys),
    'shifts.csv': shifts,
    'stops.csv': stops,
  }
  for (const [name, text] of Object.entries(files)) writeFileSync(file(name), text)
})

describe('what is refused', () => {
  it('no margin, with the reason in a sentence', async () => {
    const { code, err, out } = await validate('--unseen')
    expect([code, out]).toEqual([2, ''])
    expect(err).toBe(
      'error: --margin is missing: decide first how far the model may be off and still be useful, such as --margin "3 %". A margin chosen after the result proves nothing\n',
    )
  })

  it.each(['0 %', '100 %', '3', '1e309 %', '\u001b[2J', 'x'.repeat(5000)])('margin %j', async (margin) => {
    const { code, err } = await validate('--margin', margin)
    expect(code).toBe(2)
    expect(err).toMatch(/^error: --margin /)
    expect(err).not.toContain('\u001b')
    expect(err.length).toBeLessThan(7000)
  })

  it('what contradicts itself', async () => {
    const margin = ['--margin', '3 %']
    for (const [flags, words] of [
      [['--unseen', '--hold-out', '30 %'], 'give only one'],
      [['--sheet', '4', '--no-files'], 'leave out --no-files'],
      [['--out', ''], 'need a name'],
      [['--write', 'new.yaml'], 'needs days that no fit used'],
      [['--unseen', '--sheet', '9'], 'only 8 count'],
    ] as const) {
      const { code, err } = await validate(...margin, ...flags)
      expect([flags, code]).toEqual([flags, 2])
      expect(err).toContain(words)
    }
    const both = await call(['validate', '-', '-', ...margin], { cwd })
    expect([both.code, both.err]).toEqual([2, expect.stringContaining('standard input')])
    expect((await validate(...margin, '--runs', '38')).code).toBe(2)
  })

  it('a record that is none, one that cannot be used, and files that are not there', async () => {
    const against = (record: string, ...more: string[]) =>
      call(['validate', 'line.yaml', record, '--margin', '3 %', '--workers', '1', ...more], { cwd })
    writeFileSync(file('none.yaml'), 'cases: 3\n')
    writeFileSync(
      file('lost.yaml'),
      recordText({ ...plantKeys, shifts: '{file: gone.csv, begins: B, ends: E, good: G}' }),
    )
    expect((await against('none.yaml')).code).toBe(3)
    const lost = await against('lost.yaml')
    expect([lost.code, lost.err]).toEqual([3, expect.stringContaining('gone.csv')])
    expect(lost.err).toContain('correct the record first')
    expect((await against('nowhere.yaml')).code).toBe(5)
    expect((await against('plant.yaml', '--held-out', 'nowhere.yaml')).code).toBe(5)
    expect((await against('plant.yaml', '--held-out', 'line.yaml')).err).toContain(
      'names no days under `held-out`',
    )
    expect(existsSync(file('out'))).toBe(false)
  })
})

describe('what it answers', () => {
  it('0 where it is shown within, with report, pictures, rows and the scenario that says so', async () => {
    const { code, out, err } = await validate(
      ...['--margin', '25 %', '--unseen', '--sheet', '4', '--write', 'line-validated.yaml', '--quiet'],
    )
    expect([code, out, err]).toEqual([0, '', ''])
    expect(readdirSync(file('out/line-validate')).sort()).toEqual([
      ...['charts', 'days.csv', 'report.html', 'result.json', 'scenario.yaml', 'sheet-key.csv', 'sheet.csv'],
    ])
    expect(readdirSync(file('out/line-validate/charts'))).toEqual(['causes.png', 'days.png'])
    expect(read('line-validated.yaml')).toContain('good cases shown within 25 % of the plant')
    const page = await call(['report', 'out/line-validate/result.json', '--out', 'again.html'], { cwd })
    expect(page.code).toBe(0)
    expect(read('again.html')).toBe(read('out/line-validate/report.html'))
    const validatedBy = async (...more: string[]) => {
      const flags = ['--shifts', '2', '--no-files', '--workers', '1', '--json', ...more]
      const { out: run } = await call(['run', 'line-validated.yaml', ...flags], { cwd })
      return JSON.parse(run).about.validatedBy
    }
    expect(await validatedBy()).toMatch(/^Record Line 2, 8 days .* 5 %\)$/)
    expect(await validatedBy('--set', 'line.sealer.jams.chance=2 %')).toMatch(/no longer applies/)
    // what is there is not written over
    const again = await validate(
      '--margin',
      '25 %',
      '--unseen',
      '--write',
      'line-validated.yaml',
      '--no-files',
    )
    expect(again.code).toBe(5)
  })

  it('4 where it is not shown, and where it is shown outside', async () => {
    const narrow = await validate('--margin', '0.1 %', '--unseen', '--no-files')
    expect(narrow.code).toBe(4)
    expect(narrow.out).toContain('\nNOT SHOWN WITHIN 0.1 %: ')
    const wrong = await call(
      [
        'validate',
        'wrong.yaml',
        'plant.yaml',
        '--margin',
        '3 %',
        '--unseen',
        '--runs',
        '39',
        '--workers',
        '1',
        '--no-files',
      ],
      { cwd },
    )
    expect(wrong.code).toBe(4)
    expect(wrong.out).toContain('\nSHOWN OUTSIDE 3 %: ')
    expect(wrong.out).toContain('Best explanation of the gap: jams of sealer')
    expect(wrong.out.trimEnd().split('\n').length).toBeLessThanOrEqual(25)
  })

  it('days that a fit kept back: by their list, and by the same share and seed', async () => {
    const fit = await call(['fit', 'plant.yaml', '--hold-out', '40 %', '--seed', 's', '--quiet'], { cwd })
    expect(fit.code).toBe(0)
    const options = ['--margin', '20 %', '--json', '--no-files']
    const listed = await validate(...options, '--held-out', 'out/plant-fit/fitted.yaml', '--seed', 's')
    const drawn = await validate(...options, '--hold-out', '40 %', '--seed', 's')
    const [byList, byShare] = [listed, drawn].map(({ out }) => JSON.parse(out))
    expect(byList.days).toHaveLength(3)
    expect(byList.days).toEqual(byShare.days)
    expect(byList.isCalibration).toBe(false)
    expect(byShare.made.repeat).toBe(
      "tapeshift validate line.yaml plant.yaml --margin '20 %' --runs 39 --hold-out '40 %' --seed s",
    )
    const all = await validate('--margin', '20 %', '--no-files')
    expect(all.out).toContain('this is calibration, not validation')
  })
})

describe('an interrupt', () => {
  const argv = [
    'validate',
    'line.yaml',
    'plant.yaml',
    '--margin',
    '3 %',
    '--unseen',
    '--workers',
    '1',
    '--quiet',
  ]
  const results = (out: string) =>
    ['result.json', 'days.csv', 'report.html', 'scenario.yaml'].map((name) => read(`out/${out}/${name}`))

  it('of a study without a folder leaves nothing', async () => {
    const { code, err } = await call([...argv, '--runs', '1999', '--no-files'], { cwd, interruptAfter: 300 })
    expect(code).toBe(130)
    expect(err).toMatch(/interrupted after \d+ of 15992 shifts; nothing was written/)
  })

  it('keeps the shifts, by laws and with own stops; --resume ends with the same bytes', async () => {
    const both = [...argv, '--runs', '39', '--driven-by', 'both']
    const journal = journalOf(cwd, 'cut')
    // more than the days by laws have
    const told = await interrupted(cwd, journal, 330, [...both, '--out', 'out/cut'])
    const done = Number(/interrupted after (\d+) of 624 shifts; they are saved in out\/cut/.exec(told)?.[1])
    expect(done).toBeGreaterThanOrEqual(330)
    expect(keptIn(journal)).toHaveLength(done)
    const again = await call([...both, '--out', 'out/cut'], { cwd })
    expect([again.code, again.err]).toEqual([2, expect.stringMatching(/of this same study: add --resume/)])
    const other = await call([...both.slice(0, -1), 'stops', '--out', 'out/cut', '--resume'], { cwd })
    expect([other.code, other.err]).toEqual([2, expect.stringContaining('is from another study')])
    const resumed = await call([...both, '--out', 'out/cut', '--resume'], { cwd })
    // the built program, with two threads; 4: not shown within 3 %
    const threads = [program, ...both, '--out', 'out/fresh', '--workers', '2']
    const fresh = await promisify(execFile)('node', threads, { cwd }).catch(({ code }) => ({ code }))
    expect([resumed.code, fresh]).toEqual([4, { code: 4 }])
    expect(results('cut')).toEqual(results('fresh'))
    expect(existsSync(journal)).toBe(false)
  })

  it('is gone on from, not begun anew: what was kept is taken', async () => {
    const journal = journalOf(cwd, 'taken')
    await interrupted(cwd, journal, 30, [...argv, '--runs', '39', '--out', 'out/taken'])
    const [head, ...kept] = readFileSync(journal, 'utf8').trimEnd().split('\n')
    const { crc32: _, ...entry } = JSON.parse(kept[0]!)
    expect(entry.stops.length).toBeGreaterThan(0)
    // an output that no run has
    const strange = lineOf({ ...entry, outputs: [39_000] }).trimEnd()
    writeFileSync(journal, `${[head, strange, ...kept.slice(1)].join('\n')}\n`)
    await call([...argv, '--runs', '39', '--out', 'out/taken', '--resume'], { cwd })
    const [first] = JSON.parse(read('out/taken/result.json')).days
    expect(first.model.mean).toBeGreaterThan(1000)
  })

  it('cannot be gone on from where nothing is kept', async () => {
    const { code, err } = await call([...argv, '--resume', '--no-files'], { cwd })
    expect([code, err]).toEqual([2, expect.stringContaining('leave out --no-files')])
  })
})
