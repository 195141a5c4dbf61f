/** The one definition of the scenario format: types, validation, defaults, docs and the JSON Schema come from it. */
import * as z from 'zod'
import { type KeysOf, type Kind, kindKeys } from '../kinds/keys.js'
import type { Alike } from './alike.js'
import { source } from './arrivals.js'
import { skills } from './calls.js'
import { caseKind } from './case-keys.js'
import { mostValues } from './choices.js'
import { closure, dataSheet, site } from './closure.js'
import { breakList, member } from './crew-keys.js'
import { assume, broken, choice, decided, money, moneyFor, name, quantity, share, whole } from './kit.js'
import { mostShifts } from './limits.js'
import type { RecordedStopsOfLine } from './recorded-stops.js'
import { studyRecord } from './study-record.js'

const length = (doc: string) => quantity('length', doc, { above: 0 })

/** A piece of equipment: the keys of the kind that its `type` names. */
const pieceKinds = Object.values(kindKeys) as [(typeof kindKeys)[Kind], ...(typeof kindKeys)[Kind][]]
// its name in the types, for written out they would be as long again as all else
const equipment: z.ZodType<KeysOf> = z.discriminatedUnion('type', pieceKinds).describe('a piece of equipment')

const amount = z.union([
  z.string(),
  z.number(),
  z.boolean(),
  z.null(),
  z.array(z.unknown()),
  z.looseObject({}),
])

/** An end of a range, or its step: a quantity, or a bare number. */
const end = z.union([z.string(), z.number()])

export const scenarioSchema = z
  .strictObject({
    title: assume(z.string().max(200).describe('title of the report'), 'Sealing line'),
    target: decided(
      'case-rate',
      'required throughput: good cases out / working time (shift without breaks); also for a whole shift, such as 4000 cases/shift',
      { above: 0, to: 1000 },
    ).optional(),
    display: assume(choice(['metric', 'us'], 'units of the reports'), 'metric'),
    cases: z.record(name, caseKind).describe('the cases, by name'),
    arrivals: z.record(name, source).describe('where cases arrive from, by name'),
    line: z.record(name, equipment).describe('the pieces of the line, in the order of travel'),
    tape: assume(
      z.strictObject({
        width: assume(
          length('tape width; 2 in and 3 in are 2-inch and 3-inch tape, 48 mm and 72 mm'),
          '48 mm',
          'common practice, no source',
        ),
        roll: assume(
          quantity('length', 'length of a roll', { above: 0, to: 100_000 }),
          '1371 m',
          'common practice, no source',
        ),
        leg: assume(
          quantity('length', 'length of tape down each end of the case'),
          '70 mm',
          'common practice, no source',
        ),
        thickness: assume(
          quantity('length', 'total thickness of film and adhesive', { above: 0, to: 0.01 }),
          '48 um',
          'from memory, low confidence',
        ),
        price: money('roll', 'price of a roll').optional(),
        stretch: assume(share('how much the head stretches the tape'), '0 %'),
        'lost-per-roll': assume(
          quantity('length', 'tape of each roll lost in threading and at the end of the roll'),
          '4 m',
          'from memory, low confidence',
        ),
        ...dataSheet,
      }),
      {},
    ),
    closure: closure.optional(),
    site: site.optional(),
    crew: assume(z.record(name, member).describe('people who clear stops, by name'), {
      operators: { does: [...skills] },
    }),
    shift: z
      .strictObject({
        length: assume(
          quantity('time', 'length of the shift, breaks included', { above: 0, to: 31_622_400 }),
          '8 h',
          'common practice, no source',
        ),
        start: assume(
          choice(
            ['empty', 'carry-over', 'steady'],
            'state of the line at the start of a shift. empty; carry-over: as the shift before left it, rolls and blades included; steady: steady state of an endless run, after a warm-up that is found and removed',
          ),
          'empty',
        ),
        campaign: assume(
          whole(
            'carry-over, steady: number of shifts in a row; statistics use whole campaigns, and the first shift of each starts empty',
            1,
            1000,
          ),
          1,
        ),
        'start-up': assume(
          quantity('time', 'time at the start of a shift before cases arrive', { from: 0, to: 31_622_400 }),
          '0 min',
        ),
        'rolls-start': assume(
          choice(
            ['full', 'part-used'],
            'rolls at the start of the shift: full, or each partly used by a random share',
          ),
          'full',
        ),
        breaks: assume(breakList.describe('breaks, in order'), []),
        'breaks-stop': assume(
          choice(
            ['arrivals-and-manual-work', 'everything'],
            'what stops in a break; with arrivals-and-manual-work machines continue',
          ),
          'arrivals-and-manual-work',
        ),
        'run-out': assume(
          quantity('time', 'extra time after the last arrival to empty the line', {
            from: 0,
            to: 31_622_400,
          }),
          '0 min',
        ),
      })
      .describe('the shift'),
    money: z
      .strictObject({
        currency: z
          .string()
          .regex(/^[A-Z]{3}$/)
          .describe('three-letter currency code'),
        labour: money('h', 'cost of one person for an hour').optional(),
        downtime: money('h', 'cost of an hour in which a sealer is down for its own stops').optional(),
        energy: money('kWh', 'price of a kilowatt-hour; needs power').optional(),
        power: z
          .record(z.string(), quantity('power', 'mean power over the shift'))
          .optional()
          .describe(
            'mean power of each piece over the shift, by its path, such as line.sealer; needs energy',
          ),
        maintenance: share('share of the purchase price, a year; needs capital and shifts').optional(),
        life: quantity('time', 'years over which the capital is recovered', { above: 0 }).optional(),
        interest: share('yearly interest').optional(),
        shifts: quantity('yearly', 'number of shifts a year', { above: 0 }).optional(),
        capital: z
          .record(z.string(), moneyFor([null, 'm'], 'price; for a conveyor it may be per metre'))
          .optional()
          .describe(
            'purchase price of each piece, by its path, such as line.sealer; needs life, interest and shifts',
          ),
      })
      .optional()
      .describe('prices; costs without a price are left out of the sum and listed'),
    study: assume(
      z.strictObject({
        shifts: assume(
          whole('number of shifts to simulate (campaigns, if shifts carry over)', 2, mostShifts),
          100,
        ),
        confidence: assume(
          decided('share', 'confidence of the intervals', { from: 0.5, to: 0.9999 }),
          '95 %',
          'common practice, no source',
        ),
        seed: assume(
          z
            .union([z.string().min(1).max(200), z.number()])
            .transform(String)
            .describe('any text; the same seed gives the same shifts'),
          'tapeshift',
        ),
        engine: assume(
          choice(
            ['ahead', 'events'],
            'who simulates: events with a row of pieces that is worked ahead of them where the line is one, or events alone; the shifts are the same',
          ),
          'ahead',
        ),
        ...studyRecord,
      }),
      {},
    ),
    size: z
      .strictObject({
        choose: z
          .record(
            z.string(),
            z.union([
              z.array(amount).min(1).max(mostValues),
              z.strictObject({ from: end, to: end, step: end }),
            ]),
          )
          .describe(
            'choices, by path: a list, or from, to and step; `variant` takes names of variants, with `base` for none',
          ),
        holds: z
          .array(z.string().max(200))
          .min(1)
          .describe('promises that the line must meet, such as `9 cases/min in 95 % of shifts`'),
        order: z
          .array(z.string())
          .optional()
          .describe(
            'choices that decide between designs of the same cost, by path: earlier values are better',
          ),
        rising: z
          .array(z.string())
          .optional()
          .describe('paths of choices of which more never hurts: if more fails, less is not tried'),
      })
      .optional()
      .describe('for `tapeshift size`: the choices, and the promises that the line must meet'),
    variants: z
      .record(
        name,
        z
          .strictObject({
            note: z.string().max(500).optional().describe('description in words'),
            set: z
              .record(z.string(), amount)
              .optional()
              .describe('values by dotted path, such as line.sealer.belt-speed'),
            add: z
              .record(name, z.looseObject({ after: name.optional().describe('the piece before it') }))
              .optional()
              .describe(
                'pieces to add, by name, with their keys; the new piece passes cases to where the piece before it did, unless `to` says otherwise',
              ),
            remove: z
              .array(name)
              .min(1)
              .optional()
              .describe(
                'names of pieces to remove; cases go directly to the next piece. Prices and posts of these pieces are removed too',
              ),
          })
          .refine(
            ({ set, add, remove }) => set ?? add ?? remove,
            broken('missing-key', 'a variant must change something', 'add `set`, `add` or `remove`'),
          ),
      )
      .optional()
      .describe('named sets of changes to this scenario'),
  })
  .meta({ title: 'tapeshift scenario', description: 'One sealing line, its cases, crew and shift' })

/**
 * A validated scenario, every quantity in SI. `recordedStops`: where a shift of a plant is simulated with its own stops; `alike`:
 * pieces that were written out because they stand side by side.
 */
export type Scenario = z.output<typeof scenarioSchema> & {
  recordedStops?: RecordedStopsOfLine
  alike?: Alike
}
