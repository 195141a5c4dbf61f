/** The first screen of a validation: the verdict by the margin, the output of plant and model, which days and stops differ, what to do next. */

import { firstOf, nextPart, part, plain, safetyPart } from '../../answers/first-screen.js'
import { figures as digits } from '../../catalogue/printed-units.js'
import { counted, percentText, sentences } from '../../report/format.js'
import type { Screen, Verdict } from '../../report/screen.js'
import type { ValidateResult } from './document.js'
import { coverage, nextOfValidation } from './report.js'
import {
  drivenText,
  explanationText,
  gapText,
  signed,
  spanOfDays,
  verdictTones,
  verdictWords,
} from './words.js'

/** The first screen of a validation. */
export function validateScreen(result: ValidateResult): Screen {
  const { made, display, isCalibration } = result
  return {
    title: made.scenario.title,
    display,
    verdict: verdictOf(result),
    parts: [
      ...part(
        'But',
        [isCalibration && 'A fit may have used these days: this is calibration, not validation.'],
        'warning',
      ),
      ...part('Output', [outputText(result)]),
      ...part('Days', [coverage(result)]),
      ...part('Stops', [stopsText(result)]),
      ...part('Own stops', [drivenText(result)]),
      ...part('Left out', [leftOutText(result)]),
      ...nextPart(nextOfValidation(result).map(plain), result),
      ...part('Basis', [restsOnText(result)]),
      ...safetyPart,
    ],
  }
}

/** Days that a fit may have used say nothing for the model. */
function verdictOf({ good, margin, made, isCalibration }: ValidateResult): Verdict {
  const tone = verdictTones[good.verdict]
  return {
    word: verdictWords[good.verdict].toUpperCase(),
    tone: isCalibration && tone === 'good' ? 'warning' : tone,
    text: `${percentText(margin)}: ${gapText(good, made.confidence)}.`,
  }
}

/** Good cases a day of both sides, and the difference with its interval. */
function outputText({ good: { plant, model, difference }, made }: ValidateResult): string {
  const { mean, low, high } = difference
  const ends =
    low === null || high === null
      ? 'no interval'
      : `${signed(low)} to ${signed(high)}, ${percentText(made.confidence)} confidence`
  return `${digits(model, 4)} good cases a day in the model, ${digits(plant, 4)} in the plant: ${signed(mean)} (${ends}).`
}

/** Which days of which record, and how many runs. */
const restsOnText = (result: ValidateResult): string =>
  `${counted(result.days.length, 'day')} ${spanOfDays(result)} of the record ${result.made.record.title}. They are ${result.chosen}, with ${result.runs} runs of each. Risk of a wrong yes: ${percentText(1 - result.made.confidence)}.`

/** Causes of stops that are shown to differ, or what lies farthest apart. */
function stopsText(result: ValidateResult): string {
  const shown = result.causes
    .filter(({ stops, seconds }) => stops.isShown || seconds.isShown)
    .map(({ words }) => words)
  return sentences(shown.length > 1 && `Shown to differ: ${firstOf(shown)}.`, explanationText(result)).join(
    ' ',
  )
}

/** Days that were left out, by their reason. */
function leftOutText({ leftOut }: ValidateResult): string | false {
  const byWhy = new Map<string, string[]>()
  for (const { day, why } of leftOut) byWhy.set(why, [...(byWhy.get(why) ?? []), day])
  return byWhy.size > 0 && `${[...byWhy].map(([why, days]) => `${firstOf(days, 2)}: ${why}`).join('; ')}.`
}
