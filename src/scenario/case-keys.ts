/** Keys of one case, and of a side that varies from case to case. */
import * as z from 'zod'
import { flutes } from '../trade/case.js'
import { sizePattern } from './case-size.js'
import { caseDemands } from './closure.js'
import { assume, bare, bareOrPercent, broken, choice, decided, money, quantity, text, unitOf } from './kit.js'
import { oneLaw, triangularOf } from './law-keys.js'
import { type SizeLaw, sideEnds } from './size-law.js'

/** An end, or the like, of a law of sizes. */
const ofLaw = (doc: string) => decided('length', doc, sideEnds)

/** A side that varies from case to case: one law between two ends. */
const laws = oneLaw({
  normal: z
    .strictObject({
      mean: ofLaw('mean before the cuts'),
      sd: decided('length', 'standard deviation before the cuts', { above: 0, to: sideEnds.to }),
      'at-least': ofLaw('smallest: the distribution is cut off below it and rescaled'),
      'at-most': ofLaw('largest: cut off above it'),
    })
    .refine(
      (n) => n['at-least'] <= n.mean && n.mean <= n['at-most'] && n['at-least'] < n['at-most'],
      broken(
        'conflict',
        'at-least, mean and at-most must be in this order',
        'the smallest and the largest that the machine makes',
      ),
    )
    .optional(),
  triangular: triangularOf(ofLaw),
  uniform: z
    .strictObject({ low: ofLaw('smallest'), high: ofLaw('largest') })
    .refine(
      (u) => u.low < u.high,
      broken('conflict', 'low must be below high', 'swap the two, or write only one size'),
    )
    .optional(),
  observed: z
    .strictObject({
      file: text('CSV file beside the scenario, with a header line', 1000),
      column: text('name of its column', 200),
      unit: unitOf('length', 'unit of the recorded sizes'),
    })
    .optional(),
})

/** A map of one law, for a side that varies. */
const sizeLaw = laws.transform(({ normal, triangular, uniform, observed }): SizeLaw => {
  if (normal) {
    const { mean, sd, 'at-least': atLeast, 'at-most': atMost } = normal
    return { law: 'normal', mean, sd, atLeast, atMost }
  }
  if (triangular) return { law: 'triangular', ...triangular }
  if (uniform) return { law: 'uniform', ...uniform }
  return { law: 'observed', ...observed!, values: [] }
})

const side = (doc: string) => quantity('length', doc, sideEnds)
/** A side that may vary from case to case. */
const sideOrLaw = (doc: string) =>
  z
    .union([side(doc), sizeLaw])
    .describe(`${doc}; one size, or a distribution of sizes if each case is made to measure`)
const sides = {
  length: side('longer side of the opening'),
  width: side('shorter side'),
  height: side('opening to base'),
}
const fluteNames = Object.keys(flutes) as [keyof typeof flutes, ...(keyof typeof flutes)[]]

export const caseKind = z
  .strictObject({
    share: assume(
      bareOrPercent(
        'share of the arrivals, relative to the other cases; or a percentage of all arrivals, such as 60 %, and then for every case',
      ),
      1,
    ),
    size: z
      .string()
      .regex(new RegExp(sizePattern))
      .optional()
      .describe(
        'length x width x height in one value, such as 380 x 280 x 240 mm, instead of the three outside keys',
      ),
    length: sideOrLaw('outside length of the closed case, in the direction of travel').optional(),
    width: sideOrLaw('outside width of the closed case').optional(),
    height: sideOrLaw('outside height of the closed case').optional(),
    inside: z
      .strictObject(sides)
      .optional()
      .describe('inside dimensions, instead of the outside ones; needs flute'),
    flute: choice(
      fluteNames,
      'flute of the board: its thickness is the difference between inside and outside',
    ).optional(),
    weight: quantity('mass', 'gross weight', { above: 0 }).optional(),
    board: z
      .strictObject({
        wall: choice(['single', 'double', 'triple'], 'number of fluted layers').optional(),
        ect: quantity('edge-crush', 'edge crush strength', { above: 0 }).optional(),
        burst: quantity('pressure', 'burst strength', { above: 0 }).optional(),
      })
      .optional()
      .describe('values of the board certificate'),
    'jam-factor': assume(bare('factor on the chance of a jam for this case', 0, 1000), 1),
    'contents-value': money(null, 'loss if one case opens; only for `check`').optional(),
    ...caseDemands,
  })
  .describe('one case: outside dimensions of the closed case, or inside ones with the flute')

export type CaseKind = z.output<typeof caseKind>
