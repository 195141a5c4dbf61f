/** `tapeshift size`: what must I buy to hold the target? */
import type { SizeOptions } from '../questions/size/asked.js'
import { mostShifts, usualShifts } from '../scenario/limits.js'
import { addDrawsOptions, addRepeatable, type SimulationOptions } from './options.js'
import { type StudyCommand, scenarioAsked } from './study.js'

interface SizeFlags extends SimulationOptions, Omit<SizeOptions, 'full'> {
  everyDesign?: boolean
}

export const sizeCommand: StudyCommand<SizeFlags> = {
  name: 'size',
  description: 'the cheapest design within given choices that keeps its promises often enough',
  examples: `Examples:
  tapeshift size line.yaml                        as its key size says
  tapeshift size line.yaml --choose "line.infeed.length=4..12/1 m" --choose "crew.operator.people=1,2" \\
                           --holds "9 cases/min in 95 % of shifts"
  tapeshift size line.yaml --choose "variant=base,three-inch" --holds "target-held >= 90 % within 3 %"
  tapeshift size line.yaml --rising line.infeed.length     what fails with more infeed is not tried with less
  tapeshift size line.yaml --sure "90 %"           that keeps them in 90 % of what the inputs may be
`,
  after:
    '\nDesigns stand in order of what a shift costs by hand, then by --order, then: fewer machines, slower belts, shorter conveyors, fewer people. The first that keeps its promises is the pick.\nWhat check calls an error against the promised rate is not simulated, but with --every-design.\nExit codes: 0 done; 3 check calls the pick an error, which heads the answer (--anyway: as if it did not); 4 no design is shown to hold, or is as --sure as asked. 3 goes before 4.',
  options(command) {
    addRepeatable(
      command,
      '--choose <CHOICE>',
      'a choice, PATH=v1,v2,v3 or PATH=low..high/step; `variant` takes names of variants; repeatable',
      "the scenario's",
    )
    addRepeatable(
      command,
      '--holds <PROMISE>',
      'what the line must hold, "9 cases/min in 95 % of shifts" or "MEASURE >= VALUE"; "within 3 %" says how near counts as either; repeatable',
      "the scenario's",
    )
    addRepeatable(
      command,
      '--order <PATH>',
      'of designs that cost the same the one whose value of this choice stands first comes first; repeatable',
      "the scenario's",
    )
    addRepeatable(
      command,
      '--rising <PATH>',
      'more of this choice never hurts, as you know: what fails with more is not tried with less; repeatable',
      "the scenario's",
    )
    command.option(
      '--every-design',
      'simulate every design for all shifts and judge by the figures alone: to check the search',
    )
    addDrawsOptions(command).option(
      '--sure <SHARE>',
      'ask for a design that keeps its promises in so many of the draws of the inputs, such as "90 %"',
    )
  },
  shifts: `most shifts of each design, 2 to ${mostShifts} (default: ${usualShifts.toSize})`,
  scenario: // the most shifts of a design are not the shifts of the scenario
    (flags) => scenarioAsked({ ...flags, shifts: undefined }),
  answer: async (loaded, { shifts: most, ...flags }, context) => {
    const { choose, holds, order, rising, everyDesign: full, draws, inputs, sure } = flags
    const { size } = await import('../index.js')
    return size(loaded, { choose, holds, order, rising, full, most, draws, inputs, sure }, context)
  },
}
