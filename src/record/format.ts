/** The format of a record: which files a plant's log consists of, how its times are written, and what its words mean. */
import * as z from 'zod'
import { choice, quantity } from '../scenario/kit.js'
import { meaningFault } from './meanings.js'
import { clockLengths } from './numbers.js'
import { patternFault } from './time-pattern.js'
import { zoneFault } from './zone.js'

const mostSeconds = 31_622_400

const file = z.string().min(1).max(500).describe('CSV file beside the record, with a header line')
const column = (of: string) => z.string().min(1).max(200).describe(`name of the column: ${of}`)

/** A text that `fault` has nothing against. */
const judged = (doc: string, fault: (text: string) => { rule: string; fix: string } | null) =>
  z
    .string()
    .max(200)
    .superRefine((text, context) => {
      const found = fault(text)
      if (found)
        context.addIssue({
          code: 'custom',
          message: found.rule,
          params: { code: 'not-allowed', fix: found.fix },
        })
    })
    .describe(doc)

const times = judged(
  'how times are written, in Unicode letters such as `dd.MM.yyyy HH:mm`, or iso',
  patternFault,
)
const ownTimes = times.optional().describe('how times are written in this file, if different from the others')

const clock = judged('local time of the day, such as "09:00"', (text) =>
  /^(?:[01]?\d|2[0-3]):[0-5]\d$/.test(text)
    ? null
    : { rule: 'a time of the day as HH:mm, in quotes', fix: 'write it like `"09:00"`' },
)

const fixedBreak = z.strictObject({
  at: clock,
  for: quantity('time', 'length of the break', { above: 0, to: 86_400 }),
})

const shifts = z
  .strictObject({
    file,
    begins: column('when the shift began'),
    ends: column('when it ended'),
    good: column('good cases of the shift').optional(),
    breaks: z.array(fixedBreak).max(48).optional().describe('breaks at the same time each day'),
    times: ownTimes,
  })
  .describe('the shifts that were run, one row each')

const stops = z
  .strictObject({
    file,
    begins: column('when the stop began'),
    ends: column('when it ended').optional(),
    lasts: column('its length, instead of `ends`').optional(),
    unit: choice(['s', 'min', 'h', ...clockLengths], 'unit of `lasts`').optional(),
    piece: column('piece of the line; not needed if all stops are of one piece').optional(),
    reason: column('reason of the stop, in words of the plant'),
    times: ownTimes,
  })
  .superRefine((given, context) => {
    const tell = (code: string, message: string, fix: string) =>
      context.addIssue({ code: 'custom', message, params: { code, fix } })
    if ((given.ends === undefined) === (given.lasts === undefined))
      tell('one-of', 'exactly one of `ends` and `lasts` is needed here', 'keep one of ends, lasts')
    else if (given.lasts !== undefined && given.unit === undefined)
      tell('missing-key', '`lasts` needs a `unit`', 'add `unit: s`, `unit: min` or `unit: h`')
  })
  .describe('the stops, one row each')

const cases = z
  .strictObject({
    file,
    at: column('when the case was seen'),
    kind: column('which kind of case').optional(),
    kinds: z
      .record(z.string(), z.string())
      .optional()
      .describe('names of cases in the scenario, by those in the log'),
    source: z.string().max(40).optional().describe('entry of `arrivals` in the scenario for these cases'),
    times: ownTimes,
  })
  .describe('the cases as a scanner or counter saw them, a row for each')

const meaning = judged(
  'a stop of the scenario such as line.sealer.jams, or one of break, starved, blocked, other',
  meaningFault,
)

const record = z.strictObject({
  title: z.string().max(200).describe('title of the report'),
  notes: z.string().max(2000).optional().describe('notes in words, for later readers'),
  zone: judged('time zone of the plant by its name in the IANA list', zoneFault).optional(),
  times,
  decimal: choice(['comma', 'point'], 'decimal sign (default: found from the file)').optional(),
  'rounded-to': quantity('time', 'step of the times of stops (default: found from the file)', {
    from: 0,
    to: 3600,
  }).optional(),
  'seen-from': quantity('time', 'stops shorter than this are not in the log', {
    from: 0,
    to: mostSeconds,
  }).optional(),
  shifts,
  stops,
  cases: cases.optional(),
  means: z
    .record(z.string(), z.union([meaning, z.record(z.string(), meaning)]))
    .describe(
      'meaning of each reason in the scenario; under the name of a piece, its meaning for that piece',
    ),
  same: z
    .record(z.string(), z.string())
    .optional()
    .describe('earlier names of pieces, each with its present name'),
})

export const recordFileSchema = z.strictObject({ record })

/** A record file, every quantity in SI. */
export type RecordFile = z.output<typeof record>
