/** The legend above a picture, for datasets that stand side by side or on one another. */
import type { ChartData, LegendItem } from 'chart.js'
import { palette } from './inks.js'
import { letterWidth, plainFont } from './letters.js'

/** A legend with an entry for each dataset of which `isShown` is true. */
export const legend = (isShown: (label: string) => boolean) => ({
  display: true,
  position: 'top' as const,
  align: 'start' as const,
  labels: {
    boxWidth: 14,
    boxHeight: 12,
    padding: 10,
    color: palette.ink,
    font: plainFont,
    filter: ({ datasetIndex }: LegendItem, { datasets }: ChartData) =>
      isShown(datasets[datasetIndex ?? -1]?.label ?? ''),
  },
})

/** Height of a legend of these labels where it is at most `most` wide, by the usual width of a letter; px. */
export function legendHeight(labels: readonly string[], most: number): number {
  let rows = 1
  let used = 0
  for (const label of labels) {
    const width = label.length * letterWidth.plain + 32
    if (used > 0 && used + width > most) {
      rows++
      used = 0
    }
    used += width
  }
  return rows * 24 + 10
}
