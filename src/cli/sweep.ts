/** `tapeshift sweep`: how much is enough, and what matters? */
import { Option } from 'commander'
import type { SweepOptions } from '../questions/sweep/asked.js'
import { mostShifts, usualShifts } from '../scenario/limits.js'
import { addDrawsOptions, addRepeatable, type SimulationOptions, wholeBetween } from './options.js'
import { type StudyCommand, scenarioAsked } from './study.js'

/** Most points of a plan. */
const mostPlanned = 10_000

export const sweepCommand: StudyCommand<SimulationOptions & SweepOptions> = {
  name: 'sweep',
  description: 'one value of the scenario after another on the same random numbers: how much is enough',
  examples: `Examples:
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/1 m"           a curve: where more stops helping
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/2 m" --vary "line.sealer.belt-speed=10..24/2 m/min"
                                                                           a grid with its contours
  tapeshift sweep line.yaml --each                                         every input a tenth less and more
  tapeshift sweep line.yaml --each --vary "line.infeed.length=4..12 m" --vary "crew.operator.people=1..2"
  tapeshift sweep line.yaml --plan 40 --vary "line.infeed.length=4..12 m" --vary "line.sealer.belt-speed=10..24 m/min" \\
                            --vary "line.outfeed.length=3..9 m"            many factors at once
`,
  after:
    '\nWithout --each and --plan one --vary is a curve and two are a grid. Differences are taken shift by shift and judged together.\nExit codes: 0 done; 3 check calls the scenario as it stands or every point an error (--anyway: as if it did not). Single points that cannot work are named and change no exit code; of more than 200 points none is checked.',
  options(command) {
    addRepeatable(
      command,
      '--vary <VALUES>',
      'what is varied, PATH=low..high/step or PATH=v1,v2,v3; with --each and --plan PATH=low..high; repeatable',
      'with --each all numeric inputs',
    )
    command
      .option('--each', 'one input at a time, its two ends against the scenario as it stands')
      .addOption(
        new Option(
          '--plan <N>',
          `so many designs that fill the space of three or more factors, and a straight line through them; at most ${mostPlanned}`,
        ).argParser(wholeBetween(5, mostPlanned)),
      )
    addRepeatable(
      command,
      '--measure <NAME>',
      'measure to look at, such as tape-per-case or crew.operators.busy; repeatable',
      'the target, the rate and the cost',
    )
    addDrawsOptions(command, '60 of a curve, else 30, of more than 50 designs 20')
  },
  shifts: `shifts of each design, 2 to ${mostShifts} (default: ${usualShifts.each})`,
  scenario: scenarioAsked,
  answer: async (loaded, { vary, measure, each, plan, draws, inputs }, context) => {
    const { sweep } = await import('../index.js')
    return sweep(loaded, { vary, measure, each, plan, draws, inputs }, context)
  },
}
