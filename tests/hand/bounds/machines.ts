/** Bounds of the findings on machines and conveyors: gaps, speeds, legs, rolls, rollers, zones and buffers. */
import type { Bound } from './bound.js'

export const machineBounds: readonly Bound[] = [
  {
    code: 'speeds-by-hand',
    severity: 'note',
    told: ['line.sealer.speeds=[{of: infeed, above: 60 %, at: 20 m/min}]'],
    not: [],
    path: 'line.sealer.speeds',
  },
  {
    code: 'starts-by-hand',
    severity: 'note',
    told: ['line.sealer.acceleration=0.5 m/s2'],
    not: [],
    path: 'line.sealer.acceleration',
  },
  {
    code: 'starts-by-hand',
    severity: 'note',
    told: ['line.sealer.slow-start={after: 10 min, at: 60 %, for: 3 min}'],
    not: [],
    path: 'line.sealer.slow-start',
  },
  {
    code: 'sensors-by-hand',
    severity: 'note',
    told: ['line.sealer.stops-when={clear: infeed, at: 1 m, for: 3 s}'],
    not: [],
    path: 'line.sealer.stops-when',
  },
  // (400 + 300) / (400 + 20) = 1.667: 24.4 m/min over 1.667 are 14.64 m/min
  {
    code: 'gap-at-infeed',
    severity: 'warning',
    told: ['line.sealer.flaps.time=0 s', 'line.infeed.speed=14.7 m/min'],
    not: ['line.sealer.flaps.time=0 s', 'line.infeed.speed=14.6 m/min'],
    path: 'line.sealer.flaps',
  },
  {
    code: 'gap-at-infeed',
    severity: 'warning',
    told: ['line.sealer.flaps.time=0 s'],
    not: ['line.sealer.flaps.time=0.1 s'],
    path: 'line.sealer.flaps',
  },
  {
    code: 'belts-slower-than-infeed',
    severity: 'warning',
    told: ['line.infeed.speed=24.6 m/min'],
    not: ['line.infeed.speed=24.4 m/min'],
    path: 'line.sealer.belt-speed',
  },
  // wipe-travel 100 mm and 0.45 s at 24.4 m/min: 283 mm
  {
    code: 'gap-set-by-heads',
    severity: 'note',
    told: ['line.sealer.minimum-gap=282 mm'],
    not: ['line.sealer.minimum-gap=284 mm'],
    path: 'line.sealer.minimum-gap',
  },
  // minimum gap 0: a = 0.5 m, reset 1 s: (sqrt(0.5 / 0.25) - 0.5) / 1 = 0.914 m/s = 54.9 m/min
  {
    code: 'belts-too-fast-to-help',
    severity: 'note',
    told: [
      'line.sealer.belt-speed=55 m/min',
      'line.sealer.minimum-gap=0 mm',
      'line.sealer.heads={top: {rated-speed: 60 m/min, cut: {reset: 1 s}}}',
    ],
    not: [
      'line.sealer.belt-speed=54.8 m/min',
      'line.sealer.minimum-gap=0 mm',
      'line.sealer.heads={top: {rated-speed: 60 m/min, cut: {reset: 1 s}}}',
    ],
    path: 'line.sealer.belt-speed',
  },
  {
    code: 'legs-meet',
    severity: 'error',
    told: ['cases.box.height=140 mm'],
    not: ['cases.box.height=141 mm'],
    path: 'cases.box',
  },
  // one strip, one leg
  {
    code: 'legs-meet',
    severity: 'error',
    told: ['cases.box.height=70 mm', 'line.sealer.heads={top: {}}'],
    not: ['cases.box.height=71 mm', 'line.sealer.heads={top: {}}'],
    path: 'cases.box',
  },
  {
    code: 'short-leg',
    severity: 'warning',
    told: ['tape.leg=49 mm'],
    not: ['tape.leg=50 mm'],
    path: 'tape.leg',
  },
  // sqrt(0.085^2 + 4 x 1371 x 48e-6 / pi) = 302 mm
  {
    code: 'roll-does-not-fit',
    severity: 'error',
    told: ['line.sealer.heads.top.drum=301 mm'],
    not: ['line.sealer.heads.top.drum=303 mm'],
    path: 'line.sealer.heads.top.drum',
  },
  // 1828 m of 75 um are 426 mm, of 65 um 398 mm; 16 in are 406 mm
  {
    code: 'large-roll',
    severity: 'warning',
    told: ['line.sealer.heads={top: {}}', 'tape.roll=1828 m', 'tape.thickness=75 um'],
    not: ['line.sealer.heads={top: {}}', 'tape.roll=1828 m', 'tape.thickness=65 um'],
    path: 'tape.roll',
  },
  // three rollers under 400 mm: 133.3 mm
  {
    code: 'rollers-too-far-apart',
    severity: 'error',
    told: ['line.infeed.roller-pitch=134 mm'],
    not: ['line.infeed.roller-pitch=133 mm'],
    path: 'line.infeed.roller-pitch',
  },
  // 400 mm and 75 mm
  {
    code: 'short-zone',
    severity: 'warning',
    told: ['line.infeed.zone=474 mm'],
    not: ['line.infeed.zone=475 mm'],
    path: 'line.infeed.zone',
  },
  // 14 m hold 33 cases, 10 of them riding; 23 free places last 90 s; a mean stop takes more than 45 s
  {
    code: 'small-buffer',
    severity: 'note',
    told: ['line.infeed.length=14 m'],
    not: ['line.infeed.length=40 m'],
    path: 'line.infeed',
  },
]
