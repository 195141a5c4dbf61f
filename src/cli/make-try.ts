/** The work of `tapeshift try`: a scenario with what it draws on, or lines to start from, as a page. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
import { questionOf } from '../scenario/question.js'
import { resolvedYaml } from '../scenario/resolved-yaml.js'
import { starterScenario } from '../scenario/starter.js'
import { askedText } from '../try/asked-text.js'
import type { Start } from '../try/data.js'
import { treeOf } from '../try/draft/yaml-text.js'
import { tryPage } from '../try/page.js'
import { writeWhole } from './files.js'
import type { Io } from './io.js'
import { programs } from './page-script.js'
import { longLogsOf, mostCopied, shownPath } from './result-folder.js'
import { type CommandScenario, loadForCommand } from './scenario.js'

/** Writes the page of the scenario `name`, or of lines to start from. Throws `Fault`. */
export async function writeTryPage(name: string | undefined, out: string | undefined, io: Io): Promise<void> {
  const loaded = name === undefined ? null : await loadForCommand(name, {}, io)
  const to = out ?? (loaded ? path.join('out', `${loaded.stem}-try`) : 'out')
  const file = path.resolve(io.cwd, /\.html?$/i.test(to) ? to : path.join(to, 'try.html'))
  if (name !== undefined && name !== '-' && file === path.resolve(io.cwd, name))
    throw misuse(`the page would overwrite ${name}: choose another --out`)
  const script = programs().try
  const page = loaded ? pageOf(loaded, script) : tryPage(null, startsOf(), script)
  if (page === null)
    throw misuse(
      `a page carries logs of at most ${mostCopied / 1e6} MB, and the scenario reads ${longLogs(loaded!)}: cut the log to fewer days, or simulate the line with \`tapeshift run\``,
    )
  await writeWhole(file, page)
  io.stdout.write(`Page: ${shownPath(file, io.cwd)}\n`)
}

/** The logs that are too long to travel, with their sizes. */
const longLogs = ({ logs }: CommandScenario): string =>
  longLogsOf(logs)
    .map(([name, { bytes }]) => `${printable(name)} (${Math.ceil(bytes / 1e6)} MB)`)
    .join(', ')

/** The page of a scenario as it was asked for; null where it draws on a log that is too long to travel. */
export function pageOf(loaded: CommandScenario, script: string): string | null {
  if (longLogsOf(loaded.logs).length > 0) return null
  const { asked, text, files, logs } = loaded
  const line = {
    name: asked.name,
    text: askedText(text, asked) ?? resolvedYaml(loaded),
    files: {
      ...Object.fromEntries(files),
      ...Object.fromEntries([...logs].map(([name, { file }]) => [name, readFileSync(file, 'utf8')])),
    },
  }
  return tryPage(line, [], script)
}

/** The demos that need no other file, and the line that `tapeshift new` writes. */
function startsOf(): Start[] {
  const folder = fileURLToPath(new URL('../../scenarios/', import.meta.url))
  const demos = readdirSync(folder)
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => ({ name: file, text: readFileSync(path.join(folder, file), 'utf8') }))
    .filter(({ text }) => !/\.csv\b/.test(text))
  const starter = { name: 'line.yaml', text: starterScenario }
  return [starter, ...demos].map(({ name, text }) => ({
    ...{ name, text, files: {} },
    title: String(treeOf(text)?.title ?? name),
    about: questionOf(text) ?? 'A line with every key explained.',
  }))
}
