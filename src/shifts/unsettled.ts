/** The line of an open-ended run that does not come to its stride in the time that it is given. */
import { Fault } from '../scenario/fault.js'
import type { Scenario } from '../scenario/schema.js'
import type { WarmUp } from './steady.js'

const hour = 3600

/** Says what was seen and what would mend it. */
export function unsettled({ cases, cut, runs }: WarmUp, { shift }: Scenario): Fault {
  const quarter = Math.floor(cases.length / 4)
  const average = (from: number) => {
    const part = cases.slice(from, from + quarter)
    return (part.reduce((sum, each) => sum + each, 0) / part.length).toPrecision(3)
  }
  const length = (shift.length + shift['run-out']) * shift.campaign
  const hours = (seconds: number) => `${Number((seconds / hour).toPrecision(3))} h`
  return new Fault(
    'unsettled',
    `shift.start: with \`steady\` the line must reach a steady state in the first half of the run, but it did not (MSER-5 over the average of ${runs} runs of ${hours(length)}: cut at ${hours(cut)}).\n` +
      `    seen:  cases in the line, mean of the quarters: ${[0, 1, 2, 3].map((each) => average(each * quarter)).join(', ')}\n` +
      `    fix:   use a longer run, such as ${shift.campaign > 1 ? `\`campaign: ${shift.campaign * 4}\`` : `\`length: ${hours(length * 4)}\``}; if the cases only grow, more arrive than the line can pass, and there is no steady state`,
  )
}
