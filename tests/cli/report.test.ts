/** `tapeshift report` as its user meets it: the page again from the document alone, and what it refuses. */
import { mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { call, smallLine } from './in-process.js'

const line = `# Question: does it hold 9 cases a minute?
${smallLine}variants: {long: {note: twice the infeed, set: {line.infeed.length: 12 m}}}
`
const commands: [string, string[]][] = [
  ['run', []],
  ['compare', []],
  [
    'size',
    [
      ...['--choose', 'line.infeed.length=4 m,6 m', '--choose', 'line.sealer.belt-speed=18 m/min,20 m/min'],
      ...['--holds', '3 cases/min in 50 % of shifts', '--shifts', '200'],
    ],
  ],
]
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-report-'))
const inFolder = (command: string, file: string) => path.join(cwd, 'out', `stdin-${command}`, file)

beforeAll(async () => {
  for (const [command, more] of commands) {
    const { code, err } = await call([command, '-', '--quiet', '--workers', '1', ...more], {
      cwd,
      stdin: line,
    })
    expect(code, err).toBe(0)
  }
}, 120_000)

describe('tapeshift report', () => {
  it.each(commands.map(([command]) => command))(
    'makes of the document of %s the same bytes',
    async (command) => {
      const made = readFileSync(inFolder(command, 'report.html'), 'utf8')
      const name = path.join('out', `stdin-${command}`, 'result.json')
      // beside the page in which the line can be changed, to which it leads
      const again = path.join('out', `stdin-${command}`, 'again.html')
      const { code, out, err } = await call(['report', name, '--out', again], { cwd })
      expect([code, out, err]).toEqual([0, `Report: ${again}\n`, ''])
      expect(readFileSync(path.join(cwd, again), 'utf8')).toBe(made)
    },
  )

  it('writes beside the result unless told otherwise, and reads standard input', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-report-'))
    const text = readFileSync(inFolder('run', 'result.json'), 'utf8')
    writeFileSync(path.join(folder, 'mine.json'), text)
    expect((await call(['report', 'mine.json'], { cwd: folder })).out).toBe('Report: report.html\n')
    expect((await call(['report', '-', '--out', 'b.html'], { cwd: folder, stdin: text })).code).toBe(0)
    expect(readdirSync(folder).sort()).toEqual(['b.html', 'mine.json', 'report.html'])
    expect(readFileSync(path.join(folder, 'b.html'), 'utf8')).toBe(
      readFileSync(path.join(folder, 'report.html'), 'utf8'),
    )
  })

  it('says the question of the file, or the purpose where the scenario has one', async () => {
    expect(readFileSync(inFolder('run', 'report.html'), 'utf8')).toContain(
      'does it hold 9 cases a minute?</p>',
    )
    const stdin = line.replace('shifts: 12}', 'shifts: 12, purpose: "Is <b>10</b> possible?"}')
    await call(['run', '-', '--quiet', '--workers', '1', '--out', 'purpose'], { cwd, stdin })
    expect(readFileSync(path.join(cwd, 'purpose/report.html'), 'utf8')).toContain(
      'Is &lt;b&gt;10&lt;/b&gt; possible?',
    )
  })

  it('holds the whole document, and nothing that ends its place', () => {
    const page = readFileSync(inFolder('run', 'report.html'), 'utf8')
    const [, data] = /<script type="application\/json" id="result">([^<]*)<\/script>/.exec(page)!
    expect(JSON.parse(data!)).toEqual(JSON.parse(readFileSync(inFolder('run', 'result.json'), 'utf8')))
    // the name of a vocabulary is no address: nothing is fetched from there
    expect(page.replaceAll('http://www.w3.org/2000/svg', '').match(/https?:\/\//g)).toBeNull()
  })
})

describe('what it refuses', () => {
  const refused = async (text: string, argv: string[] = []) => {
    const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-report-'))
    writeFileSync(path.join(folder, 'r.json'), text)
    const { code, out, err } = await call(['report', 'r.json', ...argv], { cwd: folder })
    expect(out).toBe('')
    expect(readdirSync(folder)).toEqual(['r.json'])
    expect(readFileSync(path.join(folder, 'r.json'), 'utf8')).toBe(text)
    return [code, err] as const
  }
  const result = () => readFileSync(inFolder('run', 'result.json'), 'utf8')

  it.each([
    ['title: x', 'it is not JSON'],
    ['[]', 'it has no format'],
    ['null', 'it has no format'],
    [
      '{"format": "tapeshift-result/2", "command": "run"}',
      'it has format tapeshift-result/2, but this version reads',
    ],
    [
      '{"format": "tapeshift-result/1", "command": "sing\\u001b[31m"}',
      'it is a result of the command sing·[31m; reports exist for run',
    ],
    ['{"format": "tapeshift-result/1", "command": "run"}', 'the document is damaged'],
  ])('%s: 5, in words', async (text, words) => {
    const [code, err] = await refused(text)
    expect(code).toBe(5)
    expect(err).toContain(words)
    expect(err).not.toMatch(/\n\s+at .*\.(ts|js)/)
  })

  type Whole = Record<string, unknown> & {
    stretch: { from: number; to: number; states: unknown[][] }
    measures: { output: { low?: unknown } }
  }
  it.each<[string, (whole: Whole) => void, string]>([
    [
      'without an end of an interval',
      ({ measures }) => delete measures.output.low,
      '`measures.output.low` must be a number',
    ],
    [
      'with a text for a number',
      ({ measures }) => {
        measures.output.low = '3'
      },
      '`measures.output.low` must be a number',
    ],
    [
      'without its states in order',
      ({ stretch }) => {
        stretch.states[0]!.push([-1, 'waiting'])
      },
      '`stretch.states[0]` must be in order of time',
    ],
    [
      'with a state that there is none of',
      ({ stretch }) => {
        stretch.states[0]!.push([1e9, 'asleep'])
      },
      'must be one of ',
    ],
    [
      'with a stretch that ends before it begins',
      ({ stretch }) => {
        stretch.to = stretch.from - 1
      },
      '`stretch.to` must be after `from`',
    ],
    ['of which a part was taken out', (whole) => delete whole.made, '`made` must be an object'],
  ])('one that was altered, %s: 5, with its place and what to do', async (_, alter, words) => {
    const whole = JSON.parse(result()) as Whole
    alter(whole)
    const [code, err] = await refused(JSON.stringify(whole))
    expect(code).toBe(5)
    expect(err).toContain('cannot make a report of r.json: the document is damaged: ')
    expect(err).toContain(words)
    expect(err).toContain('; make the result again with `tapeshift run`')
  })

  it('a number without end, in a value that no table knows: 5', async () => {
    const [code, err] = await refused(
      result().replace(/"assumed": ?\[/, '"assumed": [{"path": "a", "value": 1e999, "basis": "b"},'),
    )
    expect(code).toBe(5)
    expect(err).toContain('`assumed[0].value`')
  })

  it('to write over its input, by whatever name: 2', async () => {
    expect(await refused(result(), ['--out', 'r.json'])).toEqual([
      2,
      'error: the report would overwrite r.json: choose another --out\n',
    ])
    expect((await refused(result(), ['--out', './x/../r.json']))[0]).toBe(2)
    const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-report-'))
    writeFileSync(path.join(folder, 'report.html'), result())
    symlinkSync(path.join(folder, 'report.html'), path.join(folder, 'link.json'))
    expect((await call(['report', 'link.json'], { cwd: folder })).code).toBe(2)
    expect(readFileSync(path.join(folder, 'report.html'), 'utf8')).toBe(result())
  })

  it('a file that is not there: 5', async () => {
    const { code, err } = await call(['report', 'none.json'], { cwd })
    expect([code, err]).toEqual([5, 'error: cannot read none.json: there is no such file or folder\n'])
  })

  it('what has no end: 2, at once', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-report-'))
    symlinkSync('/dev/zero', path.join(folder, 'endless.json'))
    for (const name of ['/dev/zero', 'endless.json']) {
      const { code, err } = await call(['report', name], { cwd: folder })
      expect([code, err]).toEqual([2, `error: ${name} is not a file: give the path of the result.json\n`])
    }
  })
})
