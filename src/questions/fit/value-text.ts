/** Values with their evidence as a scenario writes them. */
import { distributionOf, type FittedLaw, type Lognormal } from '../../statistics/fitting/law.js'
import { timesOfFirst } from './laws.js'

/** A number with four figures, as plain as it can be. */
const number = (value: number): string => String(Number(value.toPrecision(4)))

/** A time with four figures, in the unit in which it is easiest read. */
export function timeText(seconds: number): string {
  if (seconds >= 7200) return `${number(seconds / 3600)} h`
  return seconds >= 600 ? `${number(seconds / 60)} min` : `${number(seconds)} s`
}

/** `36 in 40000 cases`: a chance that was counted. */
export const chanceText = (count: number, exposure: number, unit: string): string =>
  `${count} in ${Math.round(exposure)} ${unit}`

/** `18 in 640 h`: a time to an event, of which so many came in all. */
export const timeToText = (count: number, seconds: number): string =>
  `${count} in ${number(seconds / 3600)} h`

/** `{lognormal: {mean: 85 s, cv: 0.8, from: 40}}`. */
export function lawText(law: FittedLaw, events: number): string {
  const from = `from: ${events}`
  const { mean, cv } = distributionOf(law)
  const byMean = (name: string) => `{${name}: {mean: ${timeText(mean)}, cv: ${number(cv)}, ${from}}}`
  switch (law.family) {
    case 'exponential':
      return `{exponential: {mean: ${timeText(mean)}, ${from}}}`
    case 'weibull':
      return `{weibull: {shape: ${number(law.shape)}, scale: ${timeText(law.scale)}, ${from}}}`
    case 'gamma':
    case 'lognormal':
      return byMean(law.family)
    case 'mixture':
      return mixtureText(law, events)
  }
}

/** Each part rests on its own part of the events, and so does its share. */
function mixtureText(law: FittedLaw & { family: 'mixture' }, events: number): string {
  const first = timesOfFirst(law.share, events)
  const part = (count: number, each: Lognormal) =>
    `{share: ${count} in ${events} stops, law: ${lawText(each, count)}}`
  return `{mixture: [${part(first, law.first)}, ${part(events - first, law.second)}]}`
}

/** `{observed: {file: fitted-line.sealer.jams.clear.csv, column: seconds, unit: s}}`. */
export const observedText = (file: string): string => `{observed: {file: ${file}, column: seconds, unit: s}}`
