/** Keys of one case. */
import * as z from 'zod'
import { flutes } from '../trade/case.js'
import { caseDemands } from './closure.js'
import { assume, bare, choice, money, quantity } from './kit.js'

/** A side of a case, m: from a matchbox to a container, so that a slip of the unit is found. */
const side = (doc: string) => quantity('length', doc, { from: 0.01, to: 10 })
const sides = {
  length: side('longer side of the opening'),
  width: side('shorter side'),
  height: side('opening to base'),
}
const fluteNames = Object.keys(flutes) as [keyof typeof flutes, ...(keyof typeof flutes)[]]

export const caseKind = z
  .strictObject({
    share: assume(bare('share of the arrivals, relative to the other cases'), 1, 'definition of the format'),
    length: side('outside length of the closed case, in the direction of travel').optional(),
    width: side('outside width of the closed case').optional(),
    height: side('outside height of the closed case').optional(),
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
    'jam-factor': assume(
      bare('factor on the chance of a jam for this case', 0, 1000),
      1,
      'definition of the format',
    ),
    'contents-value': money(null, 'loss if one case opens; only for `check`').optional(),
    ...caseDemands,
  })
  .describe('one case: outside dimensions of the closed case, or inside ones with the flute')

export type CaseKind = z.output<typeof caseKind>
