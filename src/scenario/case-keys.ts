/** Keys of one case. */
import * as z from 'zod'
import { flutes } from '../trade/case.js'
import { sizePattern } from './case-size.js'
import { caseDemands } from './closure.js'
import { assume, bare, bareOrPercent, choice, money, quantity } from './kit.js'
import { sizeLaw } from './size-keys.js'
import { sideEnds } from './size-law.js'

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
