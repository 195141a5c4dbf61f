/** What is to know of pieces that sensors stop and start, or whose speed follows a level. */
import { placeOf } from '../../scenario/sensor-place.js'
import { type SensedKeys, type SensorKeys, seenBy } from '../../scenario/sensors.js'
import type { Rule } from '../finding.js'

export const sensorFindings: Rule = ({ scenario, words }, tell) => {
  const told = (sensor: SensorKeys) =>
    `\`${seenBy(sensor)}\` at ${words.distance(placeOf(sensor, scenario))} from its end`
  for (const [name, piece] of Object.entries(scenario.line)) {
    const keys: SensedKeys = 'stops-when' in piece ? piece : {}
    const stops = keys['stops-when']
    if (stops === undefined) continue
    const starts = keys['starts-when']
    tell(
      'note',
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
    tell(
      'note',
      'speeds-by-hand',
      ['line', name, 'speeds'],
      `The drive of \`${name}\` changes its speed by level in a run, at once and without a ramp. Hand calculation, planned run times and replays use its usual speed, ${words.speed(usual)}.`,
      'definition of the format',
      'simulate to judge this piece',
    )
  }
}
