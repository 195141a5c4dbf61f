/** `tapeshift compare`: which layout, and how sure are we? */
import type { CompareOptions } from '../questions/compare/asked.js'
import { mostShifts, usualShifts } from '../scenario/limits.js'
import { addDrawsOptions, addJudgingOptions, addRepeatable, type SimulationOptions } from './options.js'
import { type StudyCommand, scenarioAsked } from './study.js'

interface CompareFlags extends SimulationOptions, Omit<CompareOptions, 'variants'> {
  variants?: string
  whatIf: string[]
}

export const compareCommand: StudyCommand<CompareFlags> = {
  name: 'compare',
  description:
    'compare a scenario with its variants: what differs, how certain that is, and what it is worth',
  examples: `Examples:
  tapeshift compare line.yaml                                  the base against all its variants
  tapeshift compare line.yaml --variants three-inch,long-infeed
  tapeshift compare line.yaml --what-if "line.infeed.length=9 m; line.infeed.speed=20 m/min"
  tapeshift compare line.yaml --what-if "short: line.infeed.length=4 m" --matters "target-held 3 %"
  tapeshift compare line.yaml --best cost-per-1000 --within "0.5 EUR" --among "target-held >= 90 %"
`,
  after:
    '\nAll designs are simulated with the same random numbers.\nExit codes: 0 done; 3 check finds an error in the base or in a compared variant (see --anyway); 4 no design meets all requirements. If both 3 and 4 apply, the code is 3.',
  options(command) {
    command.option(
      '--variants <NAMES>',
      'names of the variants to compare with the base, separated by commas (default: all)',
    )
    addRepeatable(
      command,
      '--what-if <CHANGES>',
      'one more variant, "NAME: PATH=VALUE; PATH=VALUE"; the name is optional; repeatable',
    )
    addRepeatable(
      command,
      '--measure <NAME>',
      'measure to compare, such as tape-per-case or crew.operators.busy; repeatable',
      'the rate, the target, the time in the line and the cost',
    )
    addRepeatable(
      command,
      '--matters <DIFFERENCE>',
      'a difference that matters to you, such as "throughput 0.1 cases/min"; the report says how many shifts would show it; repeatable',
    )
    command
      .option('--pairs', 'also compare the variants with one another')
      .option(
        '--best <MEASURE>',
        'simulate until the best design is known, by a measure such as cost-per-1000 or "highest equipment.sealer.jams"; needs --within',
      )
      .option('--within <AMOUNT>', 'with --best: a difference too small to matter, such as "0.5 EUR"')
    addRepeatable(
      command,
      '--among <EXPR>',
      'with --best: only designs that meet this condition, such as "target-held >= 90 %"; add "within 2 %" to say which misses do not matter; repeatable',
    )
    addDrawsOptions(command)
    addJudgingOptions(command)
  },
  shifts: `shifts of each design, 2 to ${mostShifts} (default: from the scenario, or ${usualShifts.each}); with --best the maximum (default ${usualShifts.untilKnown})`,
  scenario: (flags) => ({ ...scenarioAsked(flags), whatIf: flags.whatIf }),
  answer: async (loaded, flags, context) => {
    const { compare } = await import('../index.js')
    const { measure, matters, pairs, best, within, among, require, plain } = flags
    const { draws, inputs } = flags
    const variants = flags.variants?.split(',').map((each) => each.trim())
    const asked = { variants, measure, matters, pairs, best, within, among, require, plain, draws, inputs }
    return compare(loaded, asked, context)
  },
}
