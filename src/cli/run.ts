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
    'simulate many shifts: is the target reached? Output, queues, stops, tape and cost, each with its plus-minus',
  examples: `Examples:
  tapeshift run line.yaml
  tapeshift run line.yaml --shifts 500 --set "line.sealer.belt-speed=22 m/min"
  tapeshift run line.yaml --precision "0.5 %" --of throughput --of cost-per-1000
  tapeshift run line.yaml --require "target-held >= 95 %"      exit code 4 unless shown
  tapeshift run line.yaml --resume                             continue after an interrupt
  tapeshift run line.yaml --json --no-files > result.json
`,
  after:
    '\nExit codes: 0 done; 3 check finds an error in the line (see --anyway); 4 a requirement is not met. If both 3 and 4 apply, the code is 3.',
  options(command) {
    addVariantOption(command).option(
      '--precision <SHARE>',
      'simulate until plus-minus is at most this share of the figure, such as "1 %"; at least 10 shifts',
    )
    addRepeatable(
      command,
      '--of <MEASURE>',
      'measure for --precision, such as throughput or equipment.sealer.jams; repeatable (default: throughput)',
      'throughput',
    )
    addDrawsOptions(command)
    addJudgingOptions(command)
  },
  shifts: `shifts to simulate, 2 to ${mostShifts} (default: from the scenario, or ${usualShifts.each}); with --precision the maximum (default ${usualShifts.untilKnown})`,
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
