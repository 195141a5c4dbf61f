/** Bounds of the findings on people, shifts and prices. */
import type { Bound } from './bound.js'

export const peopleBounds: readonly Bound[] = [
  // a jam takes 95 s of walk and work and a headway is 1.72 s: 60 in 1000 ask for 5.7 / 7.6 = 75 % of the time, with 15 % 87 %;
  // 45 ask for 4.3 / 6.2 = 69 %, with 15 % 80 %
  {
    code: 'crew-load',
    severity: 'warning',
    told: ['line.sealer.jams.chance=60 per 1000'],
    not: ['line.sealer.jams.chance=45 per 1000'],
    path: 'crew.operator',
  },
  {
    code: 'roll-start',
    severity: 'note',
    told: ['shift.rolls-start=full'],
    not: ['shift.rolls-start=part-used'],
    path: 'shift.rolls-start',
  },
  {
    code: 'unsealed-unseen',
    severity: 'warning',
    told: ['line.sealer.roll-change.low-tape-warning=none'],
    not: ['line.sealer.roll-change.low-tape-warning=40 m'],
    path: 'line.sealer.roll-change.low-tape-warning',
  },
  {
    code: 'hasty-clearing',
    severity: 'warning',
    told: ['line.sealer.jams.clear=29 s'],
    not: ['line.sealer.jams.clear=30 s'],
    path: 'line.sealer.jams.clear',
  },
  {
    code: 'break-unattended',
    severity: 'note',
    told: ['shift.breaks-stop=arrivals-and-manual-work'],
    not: ['shift.breaks-stop=everything'],
    path: 'shift.breaks',
  },
  {
    code: 'no-breaks',
    severity: 'note',
    told: ['shift.breaks=[]'],
    not: ['shift.breaks=[]', 'shift.length=6 h'],
    path: 'shift',
  },
  {
    code: 'not-priced',
    severity: 'note',
    told: ['tape.price=40 EUR/roll'],
    not: ['tape.price=40 EUR/roll', 'money={currency: EUR}'],
    path: 'tape.price',
  },
  // capital recovery takes four keys: what is bought, its life, the interest and the shifts of a year
  {
    code: 'price-dropped',
    severity: 'warning',
    told: ['money={currency: EUR, capital: {line.infeed: 900 EUR/m}, life: 8 yr, interest: 8 %}'],
    not: [
      'money={currency: EUR, capital: {line.infeed: 900 EUR/m}, life: 8 yr, interest: 8 %, shifts: 480 per yr}',
    ],
    path: 'money.capital',
  },
]
