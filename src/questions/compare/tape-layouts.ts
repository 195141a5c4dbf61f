/** Tape and closure of each design by hand, side by side. */
import { wordsFor } from '../../catalogue/printed-units.js'
import { grouped } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { closureProof } from '../../trade/closure.js'
import type { TapeLayout } from '../../trade/tape-layout.js'
import type { CompareResult } from './document.js'

/** A row a design; empty where all lay the same tape in the same way and `check` finds the same. */
export function tapeLayoutTable({ variants, display, currency }: CompareResult): Table {
  const words = wordsFor(display)
  const layouts = Object.entries(variants).flatMap(([name, { tapeLayout }]) =>
    tapeLayout ? [[name, tapeLayout] as const] : [],
  )
  const isAlike = new Set(layouts.map(([, layout]) => JSON.stringify(layout))).size <= 1
  const figure = (value: number | null, decimals: number) => (value === null ? '–' : grouped(value, decimals))
  const says = ({ errors, warnings }: TapeLayout) =>
    [...errors.map((code) => `error ${code}`), ...warnings.map((code) => `warning ${code}`)].join(', ')
  return {
    title: 'Tape and closure, by hand',
    note: `Closure index: the weakest case over the closure named as reference, by slow sliding of the legs and of the strip on the seam; above 1 is better. ${closureProof}`,
    columns: [
      'design',
      'tape',
      `price of 1000 m, ${currency}`,
      'mass of 1000 m',
      'tape on a roll',
      'roll across',
      'fits the heads',
      'index, legs',
      'index, seam',
      'check warns of',
    ],
    words: ['fits the heads', 'check warns of'],
    rows: isAlike
      ? []
      : layouts.map(([name, layout]) => [
          name,
          words.length(layout.width),
          layout.pricePerMetre === null ? '–' : grouped(layout.pricePerMetre * 1000, 2),
          words.mass(layout.massPerMetre * 1000),
          words.mass(layout.rollMass),
          words.length(layout.rollDiameter),
          layout.fits === null ? 'not said (drum)' : layout.fits ? 'yes' : 'no',
          figure(layout.legIndex, 2),
          figure(layout.seamIndex, 2),
          says(layout),
        ]),
  }
}
