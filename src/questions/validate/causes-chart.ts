/** Chart of causes: by how many minutes a day the model stands more or less for each of them than the plant. */
import { firstOf } from '../../answers/first-screen.js'
import { figures as digits } from '../../catalogue/printed-units.js'
import { percentText } from '../../report/format.js'
import { rowAxis, spanAxis } from '../../report/marks/axis.js'
import { rowLabel } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { dots } from '../../report/marks/dots.js'
import { palette } from '../../report/marks/inks.js'
import { roomySpan } from '../../report/marks/reach.js'
import { ruleUp } from '../../report/marks/rule.js'
import { whiskers } from '../../report/marks/whiskers.js'
import type { CauseResult, ValidateResult } from './document.js'

/** Minutes a day; null of what neither side shows, and where all was put in. */
export function causesChart(result: ValidateResult): Chart | null {
  const { made } = result
  const causes = result.causes.filter(({ path, isPutIn }) => path !== null && !isPutIn)
  if (causes.length === 0) return null
  const rows = causes.map(({ seconds: { mean, low, high } }, at) => ({
    ...{ at, mean: mean / 60 },
    ...{ low: (low ?? mean) / 60, high: (high ?? mean) / 60 },
  }))
  const span = roomySpan([0, ...rows.flatMap(({ low, high }) => [low, high])], 8)
  const points = (isShown: boolean) =>
    rows
      .filter(({ at }) => causes[at]!.seconds.isShown === isShown)
      .map(({ at, mean }) => ({ x: mean, y: at }))
  return chartOf(result, {
    name: 'causes',
    section: 'causes',
    title: titleOf(causes),
    subtitle: `Model minus plant, minutes a day, mean over the days with its ${percentText(made.confidence)} interval. Left of the line: the model is stopped less than the plant.`,
    alt: `Minutes stopped a day, plant and model: ${causes.map(({ words, plant, model }) => `${words}: ${digits(plant.seconds / 60)} and ${digits(model.seconds / 60)}`).join('; ')}.`,
    mayNarrow: true,
    gap: 12,
    height: rows.length * 34 + 12,
    legend: ['not shown to differ', 'shown to differ'],
    axes: {
      x: spanAxis(span, 'minutes a day'),
      y: rowAxis(causes.map(({ words }) => rowLabel(words))),
    },
    marks: [
      ruleUp(0, { colour: palette.frame, dash: [] }),
      // what stands first lies on top
      dots('not shown to differ', points(false), { radius: 5, colour: palette.quietInk }),
      dots('shown to differ', points(true), { radius: 6, colour: palette.lost, style: 'rectRot' }),
      whiskers('interval', 'x', rows, { borderWidth: 2, borderColor: palette.quietInk }),
    ],
  })
}

function titleOf(causes: readonly CauseResult[]): string {
  const shown = causes.filter(({ seconds }) => seconds.isShown)
  return shown.length === 0
    ? 'Minutes stopped: plant and model are not shown to differ for any cause'
    : `Minutes stopped: plant and model differ for ${firstOf(shown.map(({ words }) => words))}`
}
