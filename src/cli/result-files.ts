/** Writes the files of a result, all of them or none. */
import { rm } from 'node:fs/promises'
import path from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { reportPage } from '../page/html.js'
import { chartsOf, type ResultDocument } from '../questions/charts-of-document.js'
import { onPage } from '../questions/report-of-document.js'
import { renderAll } from '../report/png.js'
import type { Report } from '../report/report.js'
import { resolvedYaml } from '../scenario/resolved-yaml.js'
import { type Content, writeTogether } from './files.js'
import { programs } from './page-script.js'
import { mostCopied } from './result-folder.js'
import type { CommandScenario } from './scenario.js'
import { isWrittenBy, ofSomeStudies } from './written.js'

/** What a command has to write: the document, its report, and what else stands beside these by its name. */
interface ResultFiles {
  document: ResultDocument
  /** Made while the pictures are drawn, as all that follows. */
  report: () => Report
  /** Makes the page in which the line can be changed of its program; null where there is none. */
  tryPage: (script: string) => string | null
  others: () => Iterable<readonly [string, Content]>
}

/** Writes all files of a result into `folder`, in place of those of a study before. Throws `Fault` `file`; then what was there stays. */
export async function writeResults(
  folder: string,
  { others, report, document, tryPage }: ResultFiles,
): Promise<void> {
  const [pictures, { rest, scripts, tried, told }] = await Promise.all([
    renderAll(chartsOf(document)),
    // made while the pictures are encoded; in turns, so that one is drawn as soon as another is done
    (async () => {
      const rest = [...others()]
      await nextTurn()
      const scripts = programs()
      const tried = tryPage(scripts.try)
      await nextTurn()
      return { rest, scripts, tried, told: report() }
    })(),
  ])
  const files: (readonly [string, Content])[] = [
    ...rest,
    ...pictures.map(({ chart, png }) => [path.join('charts', `${chart.name}.png`), png] as const),
    [
      'report.html',
      () =>
        reportPage(told, pictures, {
          ...{ document: onPage(document), script: scripts.page },
          ...(tried === null ? {} : { tryPage: 'try.html' }),
        }),
    ],
    ...(tried === null ? [] : ([['try.html', tried]] as const)),
    ['result.json', () => `${JSON.stringify(document, null, 2)}\n`],
  ]
  await writeTogether(new Map(files.map(([name, content]) => [path.join(folder, name), content])))
  const written = new Set(files.map(([name]) => name))
  const old = ofSomeStudies.filter((name) => isWrittenBy(name, document.command) && !written.has(name))
  // a folder of that name is none of ours
  for (const name of old) await rm(path.join(folder, name), { force: true }).catch(() => {})
}

/** What stands beside the result of a study: its rows, the scenario as it was simulated, and the files that this draws on. */
export const filesOfStudy = (
  rows: () => ReadonlyMap<string, string>,
  loaded: CommandScenario,
): [string, Content][] => [
  ...rows(),
  ['scenario.yaml', resolvedYaml(loaded)],
  ...loaded.files,
  ...[...loaded.logs]
    .filter(([, { bytes }]) => bytes <= mostCopied)
    .map(([name, { file }]): [string, Content] => [name, { copyOf: file }]),
]
