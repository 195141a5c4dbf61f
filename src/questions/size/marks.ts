/** How the charts of a sizing mark designs: a sign for each verdict, a ring around the one that the search ends with. */
import { flowText } from '../../answers/flow.js'
import { dots } from '../../report/marks/dots.js'
import { palette } from '../../report/marks/inks.js'
import type { Point, Points } from '../../report/marks/mark.js'
import type { PromiseResult, SizedDesign, SizeResult } from './document.js'
import { endWord } from './words.js'

/** How a verdict is drawn, and the sign for it in a subtitle. */
export const marks = {
  accepted: { sign: '●', word: 'holds', style: 'circle', fill: palette.main },
  refused: { sign: '○', word: 'fails', style: 'circle', fill: palette.paper },
  undecided: { sign: '△', word: 'undecided', style: 'triangle', fill: palette.paper },
} as const

export const verdicts = Object.keys(marks) as (keyof typeof marks)[]

/** Points of each verdict, which `of` gives. */
export const verdictPoints = (of: (verdict: SizedDesign['verdict']) => Point[], radius: number): Points[] =>
  verdicts.map((verdict) => {
    const { word, style, fill } = marks[verdict]
    return dots(word, of(verdict), { radius, style, colour: palette.main, fill, edge: 2, order: 2 })
  })

/** The design that the search ends with: the pick, or without one the nearest, or the surest. */
export const endName = (result: SizeResult): string => `the ${endWord(result).replace(' design', '')}`

/** A ring around it. */
export const endRing = (label: string, data: Point[], radius: number): Points =>
  dots(label, data, { radius: radius + 5, style: 'circle', fill: 'transparent', edge: 2, order: 1 })

/** The signs of the verdicts that are there, with their words. */
export const signsOf = (told: readonly SizedDesign['verdict'][]): string =>
  verdicts
    .filter((verdict) => told.includes(verdict))
    .map((verdict) => `${marks[verdict].sign} ${marks[verdict].word}`)
    .join(', ')

/** The values of a design in the order of the choices. */
export const designName = ({ set }: SizedDesign): string => Object.values(set).map(flowText).join(', ')

/** The mark of the design that the search ends with on fresh shifts. */
export const freshPoints = (data: Point[]): Points =>
  dots('fresh shifts', data, { radius: 5, style: 'rectRot', order: 1 })

/** What an axis of a promise is called. */
export const promiseTitle = ({ unit, label }: PromiseResult, word: string): string =>
  unit === 'share' ? '% of the shifts' : `${label}, ${word}`
