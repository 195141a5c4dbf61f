/** Writes the files of a result, all of them or none. */
import path from 'node:path'
import { reportPage } from '../page/html.js'
import { chartsOf, type ResultDocument } from '../questions/charts-of-document.js'
import { renderAll } from '../report/png.js'
import type { Report } from '../report/report.js'
import { resolvedYaml } from '../scenario/resolved-yaml.js'
import { type Content, writeTogether } from './files.js'
import { pageScript } from './page-script.js'
import { mostCopied } from './result-folder.js'
import type { CommandScenario } from './scenario.js'

/** What a command has to write beside the scenario: rows by the name of their file, the document and its report. */
interface ResultFiles {
  rows: () => ReadonlyMap<string, string>
  report: Report
  document: ResultDocument
}

/** Writes all files of a result into `folder`. Throws `Fault` `file`; then what was there stays. */
export async function writeResults(
  folder: string,
  loaded: CommandScenario,
  { rows, report, document }: ResultFiles,
): Promise<void> {
  const drawing = renderAll(chartsOf(document))
  // made while the pictures are encoded
  const texts = {
    rows: rows(),
    scenario: resolvedYaml(loaded),
    result: `${JSON.stringify(document, null, 2)}\n`,
  }
  const pictures = await drawing
  const files: [string, Content][] = [
    ...texts.rows,
    ['scenario.yaml', texts.scenario],
    ...loaded.files,
    ...[...loaded.logs]
      .filter(([, { bytes }]) => bytes <= mostCopied)
      .map(([name, { file }]): [string, Content] => [name, { copyOf: file }]),
    ...pictures.map(({ chart, png }): [string, Content] => [path.join('charts', `${chart.name}.png`), png]),
    ['report.html', reportPage(report, pictures, { document, script: pageScript() })],
    ['result.json', texts.result],
  ]
  await writeTogether(new Map(files.map(([name, content]) => [path.join(folder, name), content])))
}
