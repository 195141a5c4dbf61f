/** What a chart is to those who draw it, and what all charts share: colours, letters, frame, numbers. */
import type { ChartConfiguration, ChartOptions, Chart as DrawnChart, Plugin } from 'chart.js'
import type { RunResult } from '../../study/result.js'
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

export const chartWidth = 900

/** Dots of the picture per CSS pixel: letters stay sharp on fine screens and on paper. */
export const pixelRatio = 2

/** Name of the letters that a file is drawn with: none that a machine may have, so that all draw the same. */
export const ownFont = 'Tapeshift Sans'

/** The own letters, and in a browser what stands in for them. */
export const fontFamily = `"${ownFont}", "DejaVu Sans", system-ui, sans-serif`

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
const lettersPerLine = { title: 90, subtitle: 135 }
const footHeight = 22

/**
 * `text` in lines of at most `most` letters, broken at spaces, else after `-`, `_` or `,`, else where the
 * line is full. Nothing of the text is lost but the spaces at the breaks.
 */
export function wrapped(text: string, most: number): string[] {
  const lines: string[] = []
  let rest = text
  while (rest.length > most) {
    const head = rest.slice(0, most + 1)
    const space = head.lastIndexOf(' ')
    const joint = head.slice(0, most).search(/[-_,][^-_,]*$/) + 1
    const cut = space > most / 3 ? space : joint > most / 3 ? joint : most
    lines.push(rest.slice(0, cut))
    rest = rest.slice(cut).trimStart()
  }
  return [...lines, rest]
}

/** Height of title and subtitle in a picture, px; `gap` as for `frame`. */
export function headHeight(title: string, subtitle: string, gap: number): number {
  return (
    wrapped(title, lettersPerLine.title).length * 21 +
    wrapped(subtitle, lettersPerLine.subtitle).length * 16 +
    16 +
    gap
  )
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
        text: wrapped(title, lettersPerLine.title),
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
export function foot({ made, shift }: RunResult): Plugin {
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
export interface Lettering {
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
