/** `tapeshift run`: how does this line do over many shifts? */
import type { RunOptions } from '../questions/run/asked.js'
import { mostShifts, usualShifts } from '../scenario/limits.js'
import {
  addDrawsOptions,
  addJudgingOptions,
  addRepeatable,
  addVariantOption,
  type SimulationOptions,
} from './options.js'
import { type StudyCommand, scenarioAsked } from './study.js'

interface RunFlags extends SimulationOptions, RunOptions {
  variant?: string
}

export const runCommand: StudyCommand<RunFlags> = {
  name: 'run',
  description:
    'simulate many shifts: output, queues, stops, tape and cost with intervals, and a verdict on the target',
  examples: `Examples:
  tapeshift run line.yaml
  tapeshift run line.yaml --shifts 500 --set "line.sealer.belt-speed=22 m/min"
  tapeshift run line.yaml --precision "0.5 %" --of throughput --of cost-per-1000
  tapeshift run line.yaml --require "target-held >= 95 %"      exit code 4 unless it is shown
  tapeshift run line.yaml --resume                             go on after an interrupt
  tapeshift run line.yaml --json --no-files > result.json
`,
  after:
    '\nExit codes: 0 done; 3 check calls the line an error, which heads the answer (--anyway: as if it did not); 4 a requirement is not met. 3 goes before 4.',
  options(command) {
    addVariantOption(command).option(
      '--precision <SHARE>',
      'simulate until plus-minus is at most this share of the figure, such as "1 %"; at least 10 shifts',
    )
    addRepeatable(
      command,
      '--of <MEASURE>',
      'figure that --precision is about, such as throughput or equipment.sealer.jams; repeatable (default: throughput)',
      'throughput',
    )
    addDrawsOptions(command)
    addJudgingOptions(command)
  },
  shifts: `shifts to simulate, 2 to ${mostShifts} (default: the scenario's, or ${usualShifts.each}); with --precision the most (default ${usualShifts.untilKnown})`,
  scenario: (flags) => ({ ...scenarioAsked(flags), variant: flags.variant }),
  answer: async (loaded, { precision, of, require, plain, draws, inputs, files, json }, context) => {
    const { run } = await import('../index.js')
    const isLean = !files && !json
    return run(
      loaded,
      { precision, of, require, plain, draws, inputs, held: !isLean, moment: files },
      context,
    )
  },
}
