/** `tapeshift trace`: one shift of a study as it happened, event by event. */
import { type Command, Option } from 'commander'
import type { TraceOptions } from '../questions/trace/study.js'
import { mostShifts } from '../scenario/limits.js'
import type { Io } from './io.js'
import { addScenarioOptions, type ScenarioOptions, wholeBetween } from './options.js'

/** Cases are counted in 32 bits. */
const mostCases = 2 ** 32 - 1

/** Adds the command; `finish` takes its exit code. */
export function addTrace(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('trace')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .usage('<SCENARIO> --shift <N> [options]')
    .description('one shift, event by event, to check the model by eye')
    .addHelpText(
      'before',
      `Examples:
  tapeshift trace line.yaml --shift 3 | less
  tapeshift trace line.yaml --shift 3 --case 17
  tapeshift trace line.yaml --shift 3 --equipment sealer palletiser --from "1 h" --to "90 min"
  tapeshift trace line.yaml --shift 3 --json > shift-3.ndjson
`,
    )
    .addHelpText(
      'after',
      '\nThe shift is the one with that number in a study with the same scenario and seed. It ends with the same results as that row in shifts.csv;\nwith --case it ends with where the case waited and why.\nSeveral filters apply together. A state that lasts no time is not shown.',
    )
  addScenarioOptions(command)
    .addOption(
      new Option('--shift <N>', `number of the shift, 1 to ${mostShifts}`)
        .argParser(wholeBetween(1, mostShifts))
        .makeOptionMandatory(),
    )
    .addOption(
      new Option(
        '--case <N>',
        'only this case (numbered by arrival from 1) and the stops of the piece that it is in',
      ).argParser(wholeBetween(1, mostCases)),
    )
    .option('--equipment <NAME...>', 'only these pieces of the line; several names; repeatable')
    .option('--from <TIME>', 'only from this time of the shift, such as "1 h" (default: 0 s)')
    .option('--to <TIME>', 'only until this time, such as "90 min" (default: the end)')
    .option('--json', 'print one JSON object per line, times in seconds, not rounded')
    .action(async (name: string, options: TraceOptions & ScenarioOptions) => {
      const { writeTrace } = await import('./trace-stream.js')
      finish(await writeTrace(name, options, io))
    })
}
