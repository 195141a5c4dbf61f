/** A chart: what it is called, says and shows, and the picture of it as the library that draws it takes it. */
import type { ChartConfiguration, ChartData, ChartOptions, LegendItem } from 'chart.js'
import type { Section } from '../sections.js'
import { barRows } from './axis.js'
import { linesOf, wrapped } from './breaking.js'
import { foot, footHeight, type Origin } from './foot.js'
import { palette } from './inks.js'
import { fontFamily, letterWidth, plainFont } from './letters.js'
import { isByHand, type Mark } from './mark.js'

/** A picture to be drawn, by a browser or into a file. */
export interface Chart {
  /** Stem of the file that it is written to. */
  name: string
  /** Where it stands in a report. */
  section: Section
  title: string
  /** What the picture shows, with its numbers, in one sentence for those who do not see it. */
  alt: string
  /** Size in CSS pixels. */
  width: number
  height: number
  /** Has it nothing written beside its picture? Then it may be drawn as narrow as a telephone. */
  mayNarrow?: boolean
  config: ChartConfiguration
}

/** A chart with its picture. */
export interface Picture {
  chart: Chart
  png: Uint8Array
  /** It in Base64, where who drew it has a fast way. */
  inBase64?: () => string
}

export const chartWidth = 900

/** Dots of the picture per CSS pixel: letters stay sharp on fine screens and on paper. */
export const pixelRatio = 2

/** Most letters in a line of a title and of a subtitle, so that neither runs out of the picture. */
const lettersPerLine = { title: 94, subtitle: 135 }

/** Height of all that stands below the axis of a picture: its numbers, its title, the foot; px. */
const belowHeight = 48 + footHeight

/** A legend takes no more of the width, px. */
const legendWidth = chartWidth - 60

/** What a chart says and shows. */
export interface ChartAsked extends Pick<Chart, 'name' | 'section' | 'title' | 'alt' | 'mayNarrow'> {
  subtitle: string
  /** Between the subtitle and what follows, px. */
  gap: number
  /** Height of the picture itself, px; `all` is that of title, legend and foot with it. */
  height: number | { all: number }
  /** How the library takes data that say nothing of it; points, where nothing is said. */
  type?: 'bar' | 'line'
  /** Names of rows of bars. */
  rows?: (string | string[])[]
  /** Labels of the data that a legend names. */
  legend?: readonly string[]
  axes: Record<string, object>
  /** What is shown, from the first drawn to the last; what there is none of is left out. */
  marks: readonly (Mark | readonly Mark[] | false | null)[]
}

/** The chart of what is asked, with what made it at its foot. */
export function chartOf(origin: Origin, asked: ChartAsked): Chart {
  const { subtitle, gap, height, type, rows, legend: named, axes, marks: all, ...told } = asked
  const marks = all.flatMap((mark) => mark || [])
  const titleLines = linesOf(told.title, lettersPerLine.title)
  const subtitleLines = wrapped(subtitle, lettersPerLine.subtitle)
  const above = titleLines.length * 21 + subtitleLines.length * 16 + 16 + gap
  const around = above + (named ? legendHeight(named, legendWidth) : 0) + belowHeight
  return {
    ...told,
    width: chartWidth,
    height: typeof height === 'number' ? around + height : height.all,
    config: {
      type: rows ? 'bar' : (type ?? 'scatter'),
      data: {
        ...(rows ? { labels: rows } : {}),
        datasets: marks.filter((mark) => !isByHand(mark) && mark.data.length > 0),
      },
      options: {
        ...frame(titleLines, subtitleLines, asked),
        ...(rows ? { indexAxis: 'y' } : {}),
        // pieces of a row stand on one another
        scales: rows ? { y: { ...barRows, stacked: true }, ...axes } : axes,
      },
      plugins: [...marks.filter(isByHand), foot(origin)],
    } as ChartConfiguration,
  }
}

/** Options that every chart begins with: no animation, fixed size, letters, title and subtitle at the left. */
function frame(title: string[], subtitle: string[], { gap, legend: shown }: ChartAsked) {
  return {
    animation: false as const,
    responsive: false,
    maintainAspectRatio: false,
    devicePixelRatio: pixelRatio,
    color: palette.ink,
    font: plainFont,
    layout: { padding: { left: 14, right: 24, top: 8, bottom: footHeight } },
    plugins: {
      legend: shown ? legendOf(shown) : { display: false },
      tooltip: { enabled: false },
      title: {
        display: true,
        text: title,
        align: 'start' as const,
        color: palette.ink,
        font: { family: fontFamily, size: 16, weight: 'bold' as const },
        padding: { top: 4, bottom: 4 },
      },
      subtitle: {
        display: true,
        text: subtitle,
        align: 'start' as const,
        color: palette.quietInk,
        font: plainFont,
        padding: { bottom: gap },
      },
    },
  } satisfies ChartOptions
}

/** The legend above a picture, with an entry for each dataset of these labels. */
const legendOf = (shown: readonly string[]) => ({
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
      shown.includes(datasets[datasetIndex ?? -1]?.label ?? ''),
  },
})

/** Height of a legend of these labels where it is at most `most` wide, by the usual width of a letter; px. */
function legendHeight(labels: readonly string[], most: number): number {
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

/** Rows that a legend has more in a picture of this width than in one of the usual width, px. */
export function moreForLegend({ config }: Chart, width: number): number {
  if (!config.options?.plugins?.legend?.display) return 0
  const labels = config.data.datasets.map(({ label }) => label ?? '')
  return Math.max(0, legendHeight(labels, width - 60) - legendHeight(labels, legendWidth))
}

/** Stem of the file of a chart of a measure: names of equipment may hold what a file cannot. */
export const fileStem = (kind: string, measure: string): string =>
  `${kind}-${measure.replace(/[^\p{L}\p{N} _-]/gu, '-')}`
