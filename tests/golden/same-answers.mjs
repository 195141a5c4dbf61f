// Do two builds give the same answers? Runs the commands below with the build of another commit and with this one and
// compares, byte for byte, what they print, their exit codes and every file they write.
//
//   node tests/golden/same-answers.mjs COMMIT [WORD]      WORD: only commands that contain it
//
// The build of COMMIT is made once and kept under the system's temporary folder.

import { execFile, execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const demos = readdirSync(join(root, 'scenarios')).filter((name) => name.endsWith('.yaml'))
const few = '--shifts 12 --workers 1'

/** One command a line; OUT stands for a folder of its own, && for one after the other. */
const commands = [
  ...demos.flatMap((demo) => [
    `run scenarios/${demo} ${few} --out OUT`,
    `check scenarios/${demo}`,
    `check scenarios/${demo} --json`,
  ]),
  'run scenarios/soap-works.yaml --shifts 40 --workers 2 --json --no-files',
  'run scenarios/soap-works.yaml --variant three-inch --shifts 30 --precision 20% --require precision --no-files',
  'run scenarios/soap-works.yaml --precision 5% --of throughput --shifts 60 --no-files',
  'run scenarios/soap-works.yaml --require "throughput >= 8 cases/min" --shifts 30 --plain --no-files',
  'run scenarios/soap-works.yaml --set "line.infeed.length=90 ft" --shifts 12 --confidence 90% --no-files',
  'run scenarios/soap-works.yaml --set shift.carry-over=true --shifts 12 --no-files',
  `compare scenarios/tape-choice.yaml ${few} --out OUT`,
  `compare scenarios/soap-works.yaml ${few} --pairs --matters "throughput 0.1 cases/min" --out OUT`,
  'compare scenarios/tape-choice.yaml --best cost-per-1000 --within "5 EUR" --shifts 60 --workers 1 --out OUT',
  `compare scenarios/tape-choice.yaml ${few} --what-if "short: line.infeed.length=4 m" --measure tape-per-case --json`,
  'size scenarios/soap-works.yaml --choose "line.infeed.length=4..8/2 m" --choose crew.operator.people=1,2 --holds "8 cases/min in 80 % of shifts" --shifts 200 --workers 1 --out OUT',
  'size scenarios/tape-choice.yaml --choose variant=base,three-inch --holds "target-held >= 90 % within 3 %" --shifts 40 --workers 1 --out OUT',
  'size scenarios/soap-works.yaml --choose "line.infeed.length=4..6/2 m" --holds "90 cases/min in 95 % of shifts" --shifts 40 --no-files',
  `sweep scenarios/soap-works.yaml --vary "line.infeed.length=4..8/2 m" ${few} --out OUT`,
  `sweep scenarios/soap-works.yaml --vary "line.infeed.length=4..8/4 m" --vary "line.sealer.belt-speed=20..24/4 m/min" ${few} --out OUT`,
  `sweep scenarios/soap-works.yaml --each --vary "line.infeed.length=4..8 m" --vary crew.operator.people=1..2 ${few} --out OUT`,
  `sweep scenarios/soap-works.yaml --plan 8 --vary "line.infeed.length=4..8 m" --vary "line.sealer.belt-speed=20..24 m/min" --vary "line.outfeed.length=3..6 m" ${few} --out OUT`,
  'trace scenarios/soap-works.yaml --shift 3 --case 17',
  'trace scenarios/two-sealers.yaml --shift 2 --from "1 h" --to "70 min"',
  'trace scenarios/refill-hall.yaml --shift 2 --to "20 min" --json',
  'new OUT/line.yaml',
  'run scenarios/soap-works.yaml --shifts 3 --out OUT --quiet && report OUT/result.json --out OUT/again.html',
  'run nowhere.yaml',
  'run scenarios/soap-works.yaml --set line.infeed.lenght=3',
  'run scenarios/soap-works.yaml --shifts 1 --of nothing',
  'compare scenarios/tape-choice.yaml --variants none --matters "nothing 3"',
  'size scenarios/soap-works.yaml --choose "line.infeed.length=9..4/1 m" --holds what',
  'sweep scenarios/soap-works.yaml --vary line.infeed.width=3..4',
  'trace scenarios/soap-works.yaml --shift 1 --case 99999999',
  ...['run', 'compare', 'size', 'sweep', 'check', 'trace', 'new', 'report'].map((name) => `${name} --help`),
]

/** The folder of a commit's build, made if it is not there. */
function buildOf(commit) {
  const hash = execFileSync('git', ['rev-parse', commit], { cwd: root, encoding: 'utf8' }).trim()
  const folder = join(tmpdir(), `tapeshift-build-${hash.slice(0, 12)}`)
  if (existsSync(join(folder, '.build/cli/main.js'))) return folder
  rmSync(folder, { recursive: true, force: true })
  execFileSync('git', ['worktree', 'prune'], { cwd: root })
  execFileSync('git', ['worktree', 'add', '--detach', '--quiet', folder, hash], { cwd: root })
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'))
  execFileSync('npm', ['run', '--silent', 'build'], { cwd: folder, stdio: 'inherit' })
  return folder
}

const words = (line) => [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain)

/** All files below a folder with their bytes. */
function filesIn(folder) {
  const found = new Map()
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
    if (entry.isFile()) {
      const path = join(entry.parentPath, entry.name)
      found.set(relative(folder, path), readFileSync(path))
    }
  return found
}

/** A page without its program and the hash of it, which change with every line of code; what they draw is in the charts' files. */
function withoutScript(page) {
  const text = page.toString('utf8')
  return Buffer.from(
    text.replace(/'sha256-[^']+'/g, "'sha256'").replace(/<script>[\s\S]*?<\/script>/g, '<script></script>'),
  )
}

/** Standard error without the lines that tell how fast it goes. */
const withoutProgress = (text) =>
  Buffer.from(text.toString('utf8').replace(/^.* (a second|a minute|an hour)\b.*\n/gm, ''))

/** What a command of one build prints, ends with and writes. */
async function answerOf(build, line, workspace) {
  const cwd = mkdtempSync(join(workspace, 'answer-'))
  symlinkSync(join(root, 'scenarios'), join(cwd, 'scenarios'))
  mkdirSync(join(cwd, 'OUT'))
  const answer = new Map()
  for (const one of line.split(' && '))
    await new Promise((done) => {
      execFile(
        process.execPath,
        [join(build, '.build/cli/main.js'), ...words(one)],
        { cwd, maxBuffer: 2 ** 30, encoding: 'buffer' },
        (error, stdout, stderr) => {
          answer.set('exit code', Buffer.from(String(error?.code ?? 0)))
          answer.set('standard output', stdout)
          answer.set('standard error', withoutProgress(stderr))
          done()
        },
      )
    })
  for (const [name, bytes] of filesIn(join(cwd, 'OUT')))
    answer.set(name, name.endsWith('.html') ? withoutScript(bytes) : bytes)
  rmSync(cwd, { recursive: true })
  return answer
}

/** Where two texts part, with some context. */
function parting(before, after) {
  let at = 0
  while (at < before.length && before[at] === after[at]) at++
  const near = (bytes) => JSON.stringify(bytes.subarray(Math.max(0, at - 60), at + 100).toString('utf8'))
  return `      before ${near(before)}\n      after  ${near(after)}`
}

const [commit, word = ''] = process.argv.slice(2)
if (commit === undefined) {
  console.error('say which commit to compare with: node tests/golden/same-answers.mjs COMMIT [WORD]')
  process.exit(2)
}
const before = buildOf(commit)
const workspace = mkdtempSync(join(tmpdir(), 'tapeshift-answers-'))
const asked = commands.filter((line) => line.includes(word))
let different = 0
for (const line of asked) {
  const [was, is] = await Promise.all([answerOf(before, line, workspace), answerOf(root, line, workspace)])
  const parts = [...new Set([...was.keys(), ...is.keys()])].filter(
    (part) => !(was.get(part) && is.get(part) && was.get(part).equals(is.get(part))),
  )
  if (process.env.VERBOSE) console.log(`exit ${is.get('exit code')}, ${is.size - 3} files: ${line}`)
  if (parts.length === 0) continue
  different++
  console.log(`DIFFERENT: tapeshift ${line}`)
  for (const part of parts) {
    console.log(`   ${part}${was.has(part) ? '' : ' (new)'}${is.has(part) ? '' : ' (gone)'}`)
    if (was.has(part) && is.has(part) && !part.endsWith('.png')) console.log(parting(was.get(part), is.get(part)))
  }
}
rmSync(workspace, { recursive: true })
console.log(`${asked.length - different} commands of ${asked.length} give the same bytes`)
process.exit(different === 0 ? 0 : 1)
