/** `tapeshift report`: the report again, from a saved result. */
import type { Command } from 'commander'
import type { Io } from './io.js'
import type { ReportOptions } from './make-report.js'

/** Adds the command; `finish` takes its exit code. */
export function addReport(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('report')
    .argument('<RESULT>', 'result.json of run, compare or size, or - for standard input')
    .description('make the report page again from a saved result, without simulation')
    .addHelpText(
      'before',
      `Examples:
  tapeshift report out/line-run/result.json
  tapeshift report out/line-run/result.json --out line-4.html
  tapeshift run line.yaml --json --no-files | tapeshift report - --out line.html
`,
    )
    .option('--out <FILE>', 'page to write (default: report.html beside the result)')
    .action(async (name: string, options: ReportOptions) => {
      // what draws takes long to load: not for --help
      const { makeReport } = await import('./make-report.js')
      finish(await makeReport(name, options, io))
    })
}
