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
  description: 'vary one or more values of the scenario: how much is enough?',
  examples: `Examples:
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/1 m"           a curve: from where more does not help
  tapeshift sweep line.yaml --vary "line.infeed.length=4..12/2 m" --vary "line.sealer.belt-speed=10..24/2 m/min"
                                                                           a grid with its contours
  tapeshift sweep line.yaml --each                                         every input 10 % less and more
  tapeshift sweep line.yaml --each --vary "line.infeed.length=4..12 m" --vary "crew.operator.people=1..2"
  tapeshift sweep line.yaml --plan 40 --vary "line.infeed.length=4..12 m" --vary "line.sealer.belt-speed=10..24 m/min" \\
                            --vary "line.outfeed.length=3..9 m"            many factors at once
`,
  after:
    '\nWithout --each and --plan, one --vary gives a curve and two give a grid. All points are simulated with the same random numbers and compared shift by shift.\nExit codes: 0 done; 3 check finds an error in the scenario or at every point (see --anyway). Single points that cannot work are listed and do not change the exit code. Above 200 points, only the scenario is checked.',
  options(command) {
    addRepeatable(
      command,
      '--vary <VALUES>',
      'value to vary, PATH=low..high/step or PATH=v1,v2,v3; with --each and --plan PATH=low..high; repeatable',
      'with --each all numeric inputs',
    )
    command
      .option('--each', 'vary one input at a time: a low and a high value against the scenario')
      .addOption(
        new Option(
          '--plan <N>',
          `number of designs that fill the space of three or more factors, with a linear regression; at most ${mostPlanned}`,
        ).argParser(wholeBetween(5, mostPlanned)),
      )
    addRepeatable(
      command,
      '--measure <NAME>',
      'measure to report, such as tape-per-case or crew.operators.busy; repeatable',
      'the target, the rate and the cost',
    )
    addDrawsOptions(command, '60 for a curve, otherwise 30; 20 above 50 designs')
  },
  shifts: `shifts of each design, 2 to ${mostShifts} (default: ${usualShifts.each})`,
  scenario: scenarioAsked,
  answer: async (loaded, { vary, measure, each, plan, draws, inputs }, context) => {
    const { sweep } = await import('../index.js')
    return sweep(loaded, { vary, measure, each, plan, draws, inputs }, context)
  },
}
