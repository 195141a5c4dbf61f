/** How the charts of a sizing mark designs: a sign for each verdict, a ring around the one that the search ends with. */
import type { ChartDataset } from 'chart.js'
import { flowText } from '../../answers/flow.js'
import { palette } from '../../report/marks/chart.js'
import type { SizedDesign, SizeResult } from './document.js'

export type Points = ChartDataset<'scatter', { x: number; y: number }[]>

/** How a verdict is drawn, and the sign for it in a subtitle. */
export const marks = {
  accepted: { sign: '●', word: 'holds', style: 'circle', fill: palette.main },
  refused: { sign: '○', word: 'fails', style: 'circle', fill: palette.paper },
  undecided: { sign: '△', word: 'not told', style: 'triangle', fill: palette.paper },
} as const

/** Points of one verdict. */
export const verdictPoints = (
  verdict: keyof typeof marks,
  data: { x: number; y: number }[],
  radius: number,
): Points => ({
  label: marks[verdict].word,
  data,
  pointStyle: marks[verdict].style,
  pointRadius: radius,
  pointBackgroundColor: marks[verdict].fill,
  pointBorderColor: palette.main,
  pointBorderWidth: 2,
  order: 2,
})

/** The design that the search ends with: the pick, or without one the nearest. */
export const endName = ({ pick }: SizeResult): string => (pick === null ? 'the nearest' : 'the pick')

/** A ring around it. */
export const endRing = (label: string, data: { x: number; y: number }[], radius: number): Points => ({
  label,
  data,
  pointStyle: 'circle',
  pointRadius: radius + 5,
  pointBackgroundColor: 'transparent',
  pointBorderColor: palette.ink,
  pointBorderWidth: 2,
  order: 1,
})

/** The signs of the verdicts that are there, with their words. */
export const signsOf = (verdicts: readonly SizedDesign['verdict'][]): string =>
  (Object.keys(marks) as (keyof typeof marks)[])
    .filter((verdict) => verdicts.includes(verdict))
    .map((verdict) => `${marks[verdict].sign} ${marks[verdict].word}`)
    .join(', ')

/** The values of a design in the order of the choices. */
export const designName = ({ set }: SizedDesign): string => Object.values(set).map(flowText).join(', ')

/** The mark of the design that the search ends with on fresh shifts. */
export const freshPoints = (data: { x: number; y: number }[]): Points => ({
  label: 'fresh shifts',
  data,
  pointStyle: 'rectRot',
  pointRadius: 5,
  pointBackgroundColor: palette.ink,
  pointBorderColor: palette.ink,
  order: 1,
})
