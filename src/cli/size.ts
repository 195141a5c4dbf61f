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
  description: 'find the cheapest design, among given choices, that meets its promises often enough',
  examples: `Examples:
  tapeshift size line.yaml                        choices from the scenario's key size
  tapeshift size line.yaml --choose "line.infeed.length=4..12/1 m" --choose "crew.operator.people=1,2" \\
                           --holds "9 cases/min in 95 % of shifts"
  tapeshift size line.yaml --choose "variant=base,three-inch" --holds "target-held >= 90 % within 3 %"
  tapeshift size line.yaml --rising line.infeed.length     if more infeed fails, less is not tried
  tapeshift size line.yaml --sure "90 %"           it meets them in 90 % of the draws of the inputs
`,
  after:
    '\nDesigns are sorted by the hand-calculated cost of a shift, then by --order, then: fewer machines, slower belts, shorter conveyors, fewer people. The first design that meets its promises is chosen.\nA design is not simulated if check finds that it cannot reach the promised rate; --every-design simulates it too.\nExit codes: 0 done; 3 check finds an error in the chosen design (see --anyway); 4 no design is shown to meet its promises, or not as surely as --sure asks. If both 3 and 4 apply, the code is 3.',
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
      'a promise, "9 cases/min in 95 % of shifts" or "MEASURE >= VALUE"; add "within 3 %" to say which misses do not matter; repeatable',
      "the scenario's",
    )
    addRepeatable(
      command,
      '--order <PATH>',
      'if designs cost the same, the one with the earlier value of this choice comes first; repeatable',
      "the scenario's",
    )
    addRepeatable(
      command,
      '--rising <PATH>',
      'you know that more of this choice never hurts: if more fails, less is not tried; repeatable',
      "the scenario's",
    )
    command.option(
      '--every-design',
      'simulate every design for all shifts and judge by the figures alone; use it to check the search',
    )
    addDrawsOptions(command).option(
      '--sure <SHARE>',
      'the design must meet its promises in this share of the draws of the inputs, such as "90 %"',
    )
  },
  shifts: `maximum number of shifts of each design, 2 to ${mostShifts} (default: ${usualShifts.toSize})`,
  scenario: // the most shifts of a design are not the shifts of the scenario
    (flags) => scenarioAsked({ ...flags, shifts: undefined }),
  answer: async (loaded, { shifts: most, ...flags }, context) => {
    const { choose, holds, order, rising, everyDesign: full, draws, inputs, sure } = flags
    const { size } = await import('../index.js')
    return size(loaded, { choose, holds, order, rising, full, most, draws, inputs, sure }, context)
  },
}
