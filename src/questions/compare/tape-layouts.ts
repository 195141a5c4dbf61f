/** Tape and closure of each design by hand, side by side. */
import { inSmall } from '../../catalogue/printed-units.js'
import { figures, words } from '../../report/cell.js'
import { grouped } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { closureProof } from '../../trade/closure.js'
import type { TapeLayout } from '../../trade/tape-layout.js'
import type { CompareResult } from './document.js'

/** A row a design; empty where all lay the same tape in the same way and `check` finds the same. */
export function tapeLayoutTable({ variants, currency }: CompareResult): Table {
  const layouts = Object.entries(variants).flatMap(([name, { tapeLayout }]) =>
    tapeLayout ? [[name, tapeLayout] as const] : [],
  )
  const isAlike = new Set(layouts.map(([, layout]) => JSON.stringify(layout))).size <= 1
  const rounded = (value: number | null) => (value === null ? null : grouped(value, 2))
  const mass = (value: number) => ({ value, unit: 'kg' })
  const small = (value: number) => inSmall({ value, unit: 'm' })
  const says = ({ errors, warnings }: TapeLayout) =>
    [...errors.map((code) => `error ${code}`), ...warnings.map((code) => `warning ${code}`)].join(', ')
  return {
    title: 'Tape and closure by hand calculation',
    note: `Closure index: the weakest case / the reference closure, for slow sliding of the legs and of the strip on the seam. Above 1 is better. ${closureProof}`,
    columns: [
      ...words('design'),
      ...figures('tape', `price of 1000 m, ${currency}`, 'mass of 1000 m', 'tape on a roll', 'roll across'),
      ...words('fits the heads'),
      ...figures('index, legs', 'index, seam'),
      ...words('check warns of'),
    ],
    rows: isAlike
      ? []
      : layouts.map(([name, layout]) => [
          name,
          small(layout.width),
          rounded(layout.pricePerMetre && layout.pricePerMetre * 1000),
          mass(layout.massPerMetre * 1000),
          mass(layout.rollMass),
          small(layout.rollDiameter),
          layout.fits === null ? 'not said (drum)' : layout.fits ? 'yes' : 'no',
          rounded(layout.legIndex),
          rounded(layout.seamIndex),
          says(layout),
        ]),
  }
}
