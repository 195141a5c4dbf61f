/** What is to know of pieces that sensors stop and start, whose speed follows a level, or that start slowly. */

import { runUpOf } from '../../kinds/run-up.js'
import { placeOf } from '../../scenario/sensor-place.js'
import { type SensedKeys, type SensorKeys, seenBy } from '../../scenario/sensors.js'
import type { Rule } from '../finding.js'
import { slowStartsOf } from '../planned.js'

export const sensorFindings: Rule = ({ scenario, words }, tell) => {
  const told = (sensor: SensorKeys) =>
    `\`${seenBy(sensor)}\` at ${words.distance(placeOf(sensor, scenario))} from its end`
  for (const [name, piece] of Object.entries(scenario.line)) {
    const keys: SensedKeys = 'stops-when' in piece ? piece : {}
    const stops = keys['stops-when']
    if (stops === undefined) continue
    const starts = keys['starts-when']
    tell.note(
      'sensors-by-hand',
      ['line', name, 'stops-when'],
      `A sensor on ${told(stops)} stops \`${name}\`${starts === undefined ? '' : `, and one on ${told(starts)} starts it`}. A run includes the effect; the hand calculation ignores it. A case that enters a station leaves the conveyor at once as a whole. A sensor less than a case length before a station therefore sees it for a shorter time.`,
      'definition of the format',
      'simulate to judge this piece',
    )
  }
}

export const speedFindings: Rule = ({ scenario, words }, tell) => {
  for (const [name, piece] of Object.entries(scenario.line)) {
    if (!('speeds' in piece) || piece.speeds === undefined) continue
    const usual = piece.type === 'sealer' ? piece['belt-speed'] : piece.speed
    tell.note(
      'speeds-by-hand',
      ['line', name, 'speeds'],
      `The drive of \`${name}\` runs at other speeds by level in a run, at once. Hand figures, planned run times and replays are of its usual speed, ${words.speed(usual)}.`,
      'definition of the format',
      'simulate to judge this piece',
    )
  }
}

export const startFindings: Rule = ({ scenario, hand, words }, tell) => {
  for (const [name, piece] of Object.entries(scenario.line)) {
    if ('acceleration' in piece && piece.acceleration !== undefined)
      tell.note(
        'starts-by-hand',
        ['line', name, 'acceleration'],
        `Each start of \`${name}\` from rest costs ${words.time(runUpOf(piece, piece.type === 'sealer' ? piece['belt-speed'] : piece.speed))} in a run, at its usual speed. Hand calculation ignores it.`,
        'even acceleration: speed / (2 x acceleration)',
        'simulate to judge this piece',
      )
    if (!('slow-start' in piece) || piece['slow-start'] === undefined) continue
    const { count, time } = slowStartsOf(scenario, piece)
    const rate = hand.line.pieces.find((each) => each.name === name)?.rate ?? 0
    const each = `Each slow start of \`${name}\` costs as much as standing ${words.time(time)}${Number.isFinite(rate) ? `, at most ${Math.round(rate * time)} cases` : ''}.`
    tell.note(
      'starts-by-hand',
      ['line', name, 'slow-start'],
      `${each} Hand calculation counts those that are known in advance, ${count} a shift: after breaks, planned work and handovers, and at its start. It ignores those after breakdowns and other stops.`,
      'definition of the format',
      'simulate to judge this piece',
    )
  }
}
