/** Bounds of the findings on cases: what their board allows, and what it asks of the tape. */
import type { Bound } from './bound.js'

export const caseBounds: readonly Bound[] = [
  // Item 222 / Rule 41: 32 lb/in single wall is the row of 65 lb = 29.48 kg and 75 in = 1905 mm
  {
    code: 'over-board-limit',
    severity: 'warning',
    told: ['cases.box.weight=65.1 lb'],
    not: ['cases.box.weight=65 lb'],
    path: 'cases.box.weight',
  },
  // 400 + 300 + 1205 mm are 1905 mm, 75.0 in
  {
    code: 'over-board-limit',
    severity: 'warning',
    told: ['cases.box.height=1206 mm'],
    not: ['cases.box.height=1205 mm'],
    path: 'cases.box.board',
  },
  // the first row of single wall is 23 lb/in
  {
    code: 'board-below-table',
    severity: 'warning',
    told: ['cases.box.board.ect=22 lbf/in'],
    not: ['cases.box.board.ect=23 lbf/in'],
    path: 'cases.box.board',
  },
  // ASTM D1974 leaves triple wall out
  {
    code: 'triple-wall',
    severity: 'warning',
    told: ['cases.box.board={wall: triple, ect: 67 lbf/in}'],
    not: ['cases.box.board={wall: double, ect: 67 lbf/in}'],
    path: 'cases.box.board',
  },
  // (48 - 2) / 2 - 8 = 15 mm
  {
    code: 'little-coverage',
    severity: 'warning',
    told: ['closure.centring-error=8.1 mm'],
    not: ['closure.centring-error=8 mm'],
    path: 'closure.centring-error',
  },
  // legs go by their square: (70 / 71)^2 is 0.97
  {
    code: 'weaker-closure',
    severity: 'warning',
    told: ['closure.reference.leg=71 mm'],
    not: ['closure.reference.leg=70 mm'],
    path: 'cases.box',
  },
  // 41 N over 40 N; and with a reference that says nothing of its seam, the seam is left out
  {
    code: 'weaker-closure',
    severity: 'warning',
    told: ['closure.load=41 N'],
    not: ['closure.load=40 N', 'closure.reference={width: 48 mm, leg: 70 mm, load: 40 N}'],
    path: 'cases.box',
  },
  // 1/8 in is 3.175 mm
  {
    code: 'wide-seam',
    severity: 'warning',
    told: ['closure.seam-gap=3.2 mm'],
    not: ['closure.seam-gap=3.17 mm'],
    path: 'closure.seam-gap',
  },
  {
    code: 'tape-temperature',
    severity: 'warning',
    told: ['site.temperature=[4.9 degC, 30 degC]'],
    not: ['site.temperature=[5 degC, 40 degC]'],
    path: 'site.temperature',
  },
  {
    code: 'tape-temperature',
    severity: 'warning',
    told: ['site.temperature=[10 degC, 105 degF]'],
    not: ['site.temperature=[10 degC, 104 degF]'],
    path: 'site.temperature',
  },
  // USPS Publication 2, 4-5.2: not less than 2 in; below 48 mm it is not even sold as that
  {
    code: 'postal-width',
    severity: 'note',
    told: ['cases.box.ships-by=post'],
    not: [
      'cases.box.ships-by=post',
      'tape.width=50.8 mm',
      'line.sealer.heads={top: {takes: [48 mm, 75 mm]}}',
    ],
    path: 'tape.width',
  },
  {
    code: 'postal-width',
    severity: 'warning',
    told: ['cases.box.ships-by=post', 'tape.width=47 mm'],
    not: ['cases.box.ships-by=parcel', 'tape.width=47 mm'],
    path: 'tape.width',
  },
  // 30 lb and 65 lb
  {
    code: 'heavy-for-width',
    severity: 'note',
    told: ['cases.box.weight=30.1 lb'],
    not: ['cases.box.weight=30 lb'],
    path: 'cases.box.weight',
  },
  {
    code: 'heavy-for-width',
    severity: 'warning',
    told: ['cases.box.weight=65.1 lb'],
    not: ['cases.box.weight=65.1 lb', 'tape.width=72 mm', 'line.sealer.heads={top: {takes: [48 mm, 75 mm]}}'],
    path: 'cases.box.weight',
  },
  {
    code: 'double-wall-narrow',
    severity: 'note',
    told: ['cases.box.board={wall: double, ect: 42 lbf/in}'],
    not: ['cases.box.board={wall: single, ect: 42 lbf/in}'],
    path: 'cases.box',
  },
  {
    code: 'recycled-board',
    severity: 'note',
    told: ['cases.box.recycled=true'],
    not: ['cases.box.recycled=false'],
    path: 'cases.box.recycled',
  },
  {
    code: 'overfilled',
    severity: 'note',
    told: ['cases.box.overfill=0.1 mm'],
    not: ['cases.box.overfill=0 mm'],
    path: 'cases.box.overfill',
  },
  {
    code: 'overfilled',
    severity: 'warning',
    told: ['cases.box.overfill=3.2 mm'],
    not: ['cases.box.overfill=0 mm'],
    path: 'cases.box.overfill',
  },
  // 40 N/cm x 4.8 cm = 192 N
  {
    code: 'tape-tears',
    severity: 'error',
    told: ['closure.load=192.1 N'],
    not: ['closure.load=95 N'],
    path: 'tape.tensile',
  },
  {
    code: 'tape-tears',
    severity: 'warning',
    told: ['closure.load=96.1 N'],
    not: ['closure.load=96 N'],
    path: 'tape.tensile',
  },
  // a tenth of 150 %
  {
    code: 'tape-overstretched',
    severity: 'warning',
    told: ['tape.stretch=15.1 %'],
    not: ['tape.stretch=15 %'],
    path: 'tape.stretch',
  },
]
