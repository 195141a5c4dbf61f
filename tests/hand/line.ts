/** A line that checks without an error or a warning, and a short way to change it. */
import { type Checked, checkScenario } from '../../src/hand/check.js'
import type { FindingCode } from '../../src/hand/finding.js'
import { type Loaded, loadScenario } from '../../src/scenario/load.js'

/**
 * Arrivals every 4 s; belts 24.4 m/min and gap 300 mm pass 34.9 cases/min. Every key that a check can ask for is given, so
 * that no check is left out.
 */
export const soundLine = `title: A line to check
target: 14 cases/min
cases:
  box: {length: 400 mm, width: 300 mm, height: 300 mm, weight: 12 kg, board: {wall: single, ect: 32 lbf/in},
        ships-by: pallet, recycled: false, overfill: 0 mm}
arrivals: {packing: {time-between: 4 s, when-full: queue}}
line:
  infeed: {type: conveyor, length: 40 m, speed: 20 m/min, roller-pitch: 75 mm}
  sealer:
    type: sealer
    belt-speed: 24.4 m/min
    flaps: {time: 1 s}
    heads: {top: {drum: 405 mm}, bottom: {drum: 405 mm}}
    jams: {chance: 0.5 per 1000 cases, clear: 80 s}
    tape-breaks: {chance: 0.1 per 1000, fix: 45 s}
    blade: {service-after: 30000 cuts, time: 10 min}
    breakdowns: {after: 40 h, repair: 15 min}
tape: {width: 48 mm, roll: 1371 m, leg: 70 mm, adhesion: 5 N/cm, shear: 1000 min, tensile: 40 N/cm, elongation: 150 %,
       applies-at: [5 degC, 40 degC]}
closure: {seam-gap: 2 mm, centring-error: 3 mm, load: 40 N, reference: {width: 48 mm, leg: 70 mm, seam-gap: 2 mm,
          centring-error: 3 mm, load: 40 N}}
site: {temperature: [10 degC, 30 degC]}
crew: {operator: {walk: 15 s, does: [jams, roll-change, blade, breakdowns]}}
shift: {length: 8 h, rolls-start: part-used, breaks: [{at: 4 h, for: 30 min}], breaks-stop: everything}
`

export const loadedWith = (sets: readonly string[] = [], text = soundLine): Loaded =>
  loadScenario(text, { file: 'line.yaml', sets })

export const checkedWith = (sets: readonly string[] = [], text = soundLine): Checked =>
  checkScenario(loadedWith(sets, text))

/** The finding of a code; undefined where it is not told. */
export const findingOf = (code: FindingCode, sets: readonly string[] = [], text = soundLine) =>
  checkedWith(sets, text).findings.find((each) => each.code === code)
