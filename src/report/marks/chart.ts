/** What a chart is to those who draw it, and what all charts share: colours, letters, frame, numbers. */

import type { ChartConfiguration, ChartOptions, Chart as DrawnChart, Plugin } from 'chart.js'
import { counted, grouped } from '../format.js'

/** A picture to be drawn, by a browser or into a file. */
export interface Chart {
  /** Stem of the file that it is written to. */
  name: string
  title: string
  /** What the picture shows, with its numbers, in one sentence for those who do not see it. */
  alt: string
  /** Size in CSS pixels. */
  width: number
  height: number
  config: ChartConfiguration
}

/** A chart with its picture. */
export interface Picture {
  chart: Chart
  png: Uint8Array
}

export const chartWidth = 900

/** Dots of the picture per CSS pixel: letters stay sharp on fine screens and on paper. */
export const pixelRatio = 2

/** Name of the letters that a file is drawn with: none that a machine may have, so that all draw the same. */
export const ownFont = 'Tapeshift Sans'

/** The own letters, and in a browser what stands in for them. */
export const fontFamily = `"${ownFont}", "DejaVu Sans", system-ui, sans-serif`

/** Letters of an axis, which does not take those of the chart. */
export const tickFont = { family: fontFamily, size: 12 }

export const palette = {
  ink: '#1c2430',
  quietInk: '#55606e',
  grid: '#e4e8ec',
  frame: '#aab2bc',
  paper: '#ffffff',
  pause: '#eef0f3',
  /** What went well, or simply what is counted. */
  main: '#2c85db',
  band: 'rgba(44, 133, 219, 0.25)',
  /** What fell short or was lost. */
  short: '#ea9b5f',
  target: '#1c2430',
  lost: '#b34218',
}

/** Most letters in a line of a title and of a subtitle, so that neither runs out of the picture. */
const lettersPerLine = { title: 94, subtitle: 135 }

/** How many of the first letters of `text` fit where `room` usual ones do: names may be of wide letters only. */
function lettersThatFit(text: string, room: number): number {
  let left = room
  let count = 0
  for (const letter of text) {
    left -= /[WMwm@%\u2e80-\u{10ffff}]/u.test(letter) ? 1.9 : /\p{Lu}/u.test(letter) ? 1.3 : 1
    if (left < 0) break
    count += letter.length
  }
  return Math.max(count, 1)
}

const titleLines = (title: string) => wrapped(title, (rest) => lettersThatFit(rest, lettersPerLine.title))

const footHeight = 22

/**
 * `text` in lines of at most `mostOf` letters, broken at spaces, else after `-`, `_` or `,`, else where the
 * line is full. Nothing of the text is lost but the spaces at the breaks. Where letters differ in width `mostOf` is a function of
 * what is left.
 */
export function wrapped(text: string, mostOf: number | ((rest: string) => number)): string[] {
  const lines: string[] = []
  let rest = text
  for (;;) {
    const most = typeof mostOf === 'number' ? mostOf : mostOf(rest)
    if (rest.length <= most) return [...lines, rest]
    const head = rest.slice(0, most + 1)
    const space = head.lastIndexOf(' ')
    const joint = head.slice(0, most).search(/[-_,][^-_,]*$/) + 1
    const cut = space > most / 3 ? space : joint > most / 3 ? joint : most
    lines.push(rest.slice(0, cut))
    rest = rest.slice(cut).trimStart()
  }
}

/** `text` without its middle where it has more than `most` letters: names that are alike often differ at their ends. */
export function shortened(text: string, most: number): string {
  const letters = [...text]
  if (letters.length <= most) return text
  const head = Math.ceil((most - 1) / 2)
  return `${letters.slice(0, head).join('')}…${letters.slice(letters.length - (most - 1 - head)).join('')}`
}

/** A name beside its row in two lines at most, without its middle where it is longer. */
export function rowLabel(name: string): string[] {
  for (let most = [...name].length; ; most--) {
    const lines = wrapped(shortened(name, most), (rest) => lettersThatFit(rest, 26))
    if (lines.length <= 2) return lines
  }
}

/** The least of 1, 2, 5, 10, 20, ... that is not below `width`, or of their decimal fractions. */
export function roundStep(width: number): number {
  const power = 10 ** Math.floor(Math.log10(width) + 1e-9)
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= width * (1 - 1e-9))!
}

/** Legend above a picture, for datasets that stand side by side or on one another. */
export const legend = {
  display: true,
  position: 'top' as const,
  align: 'start' as const,
  labels: {
    boxWidth: 14,
    boxHeight: 12,
    padding: 10,
    color: palette.ink,
    font: { family: fontFamily, size: 12 },
  },
}

/** Height of a legend of these labels where it is at most `most` wide, by the usual width of a letter; px. */
export function legendHeight(labels: readonly string[], most = chartWidth - 60): number {
  let rows = 1
  let used = 0
  for (const label of labels) {
    const width = label.length * 7.3 + 32
    if (used > 0 && used + width > most) {
      rows++
      used = 0
    }
    used += width
  }
  return rows * 24 + 10
}

/** Height of title and subtitle in a picture, px; `gap` as for `frame`. */
export function headHeight(title: string, subtitle: string, gap: number): number {
  return titleLines(title).length * 21 + wrapped(subtitle, lettersPerLine.subtitle).length * 16 + 16 + gap
}

/** Height of all that stands below the axis of a picture: its numbers, its title, the foot; px. */
export const belowHeight = 48 + footHeight

/**
 * Options that every chart begins with: no animation, fixed size, letters, title and subtitle at the left,
 * `gap` px between these and what follows.
 */
export function frame(title: string, subtitle: string, gap: number) {
  return {
    animation: false as const,
    responsive: false,
    maintainAspectRatio: false,
    devicePixelRatio: pixelRatio,
    color: palette.ink,
    font: { family: fontFamily, size: 12 },
    layout: { padding: { left: 14, right: 24, top: 8, bottom: footHeight } },
    plugins: {
      legend: { display: false },
      tooltip: { enabled: false },
      title: {
        display: true,
        text: titleLines(title),
        align: 'start' as const,
        color: palette.ink,
        font: { family: fontFamily, size: 16, weight: 'bold' as const },
        padding: { top: 4, bottom: 4 },
      },
      subtitle: {
        display: true,
        text: wrapped(subtitle, lettersPerLine.subtitle),
        align: 'start' as const,
        color: palette.quietInk,
        font: { family: fontFamily, size: 12 },
        padding: { bottom: gap },
      },
    },
  } satisfies ChartOptions
}

/** Title of an axis in the one style of all charts. */
export function axisTitle(text: string) {
  return { display: true, text, color: palette.quietInk, font: { family: fontFamily, size: 12 } }
}

/**
 * An axis without anything on it that keeps `width` px free right of the picture. Padding would do that too, but the
 * title would have to do without that room as well and be drawn narrower.
 */
export function roomAtRight(width: number) {
  return {
    type: 'linear' as const,
    position: 'right' as const,
    ticks: { display: false },
    grid: { display: false },
    border: { display: false },
    afterFit(scale: { width: number }) {
      scale.width = width
    },
  }
}

/** The time along an axis. */
export interface AxisTime {
  word: 'hours' | 'minutes'
  /** s. */
  unit: number
}

/** What is shorter than this is drawn over minutes, s. */
const shortTime = 7200

/** Unit of an axis that reaches `end` s. */
export const axisTime = (end: number): AxisTime =>
  end < shortTime ? { word: 'minutes', unit: 60 } : { word: 'hours', unit: 3600 }

/** What made the picture, small at its foot: a picture that travels alone still says where it comes from. */
export function foot({
  made,
  shift,
}: {
  made: { version: string; seed: string; shifts: number; scenario: { sha256: string } }
  shift: { campaign: number }
}): Plugin {
  const seed = made.seed.length > 30 ? `${made.seed.slice(0, 29)}…` : made.seed
  const text = [
    `tapeshift ${made.version}`,
    counted(made.shifts, shift.campaign > 1 ? 'campaign' : 'shift'),
    `seed "${seed}"`,
    `scenario ${made.scenario.sha256.slice(0, 12)}`,
  ].join(' · ')
  return {
    id: 'foot',
    afterDraw(chart) {
      written(chart.ctx, text, chart.width - 24, chart.height - 8, {
        size: 10,
        colour: palette.quietInk,
        align: 'right',
      })
    },
  }
}

/** How a text is written by hand; `y` of the text is its base line. */
interface Lettering {
  size: number
  colour: string
  align?: 'left' | 'center' | 'right'
  isBold?: boolean
}

/** What a chart is drawn on. */
export type Context = DrawnChart['ctx']

/** Width of `text` in the picture, px. */
export function widthOf(ctx: Context, text: string, lettering: Pick<Lettering, 'size' | 'isBold'>): number {
  ctx.save()
  ctx.font = fontOf(lettering)
  const { width } = ctx.measureText(text)
  ctx.restore()
  return width
}

function fontOf({ size, isBold }: Pick<Lettering, 'size' | 'isBold'>): string {
  return `${isBold ? 'bold ' : ''}${size}px ${fontFamily}`
}

/** Writes `text` into the picture. */
export function written(ctx: Context, text: string, x: number, y: number, lettering: Lettering): void {
  ctx.save()
  ctx.font = fontOf(lettering)
  ctx.fillStyle = lettering.colour
  ctx.textAlign = lettering.align ?? 'left'
  ctx.textBaseline = 'alphabetic'
  ctx.fillText(text, x, y)
  ctx.restore()
}

/** A share in per cent: `43 %`, and `0.4 %` where the whole number would hide it. */
export function percent(share: number): string {
  const value = share * 100
  return `${grouped(value, value > 0 && value < 0.95 ? 1 : 0)} %`
}
