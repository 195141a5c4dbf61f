/** In words and as a table: in what share of what the inputs may be each design is better than the base. */
import type { DifferenceFigure } from '../../answers/difference-figure.js'
import { lineRow } from '../../catalogue/of-line.js'
import { type Cell, figures as ofFigures, words } from '../../report/cell.js'
import { counted, percent, sentences } from '../../report/format.js'
import type { Table } from '../../report/report.js'
import { chanceLimits } from '../../statistics/events.js'
import type { CompareResult } from './document.js'

/** `87 % (76 to 94 %)`: a share of draws with its exact limits. */
export function shareOfDraws(some: number, draws: number, confidence: number): string {
  const { low, high } = chanceLimits(some, draws, confidence)
  return `${percent(some / draws)} (${percent(low).replace(' %', '')} to ${percent(high)})`
}

/** `the same in all draws`, `better in 93 % (84 to 98 %) of 60 draws`, or `more` where nobody says which way is better; null where inputs were not drawn. */
function acrossDrawsText(
  measure: string,
  figure: DifferenceFigure | undefined,
  confidence: number,
): string | null {
  const across = figure?.acrossDraws
  if (!across || across.draws === 0) return null
  const way = lineRow(measure)?.better ?? 'neither'
  const some = way === 'down' ? across.less : across.more
  const alike = across.draws - across.more - across.less
  if (alike === across.draws) return 'the same in all draws'
  return `${way === 'neither' ? 'more' : 'better'} in ${shareOfDraws(some, across.draws, confidence)}${alike > 0 ? `, alike in ${percent(alike / across.draws)}` : ''}`
}

/** What the compared measures are called. */
export const labelsOf = (
  compared: readonly string[],
  differences: Record<string, Record<string, DifferenceFigure>>,
): string[] =>
  compared.map(
    (measure) => Object.values(differences).find((each) => each[measure])?.[measure]?.label ?? measure,
  )

/** Each design against the base over what the inputs may be; without rows where they are held fixed. */
export function acrossDrawsTable({ drawn, differences, compared, made }: CompareResult): Table {
  return {
    title: 'With uncertain inputs',
    note: drawn
      ? `The share of ${counted(drawn.draws, 'draw')} of the uncertain inputs, ${counted(drawn.shifts, 'shift')} each, in which a design is better than the base. All designs have the same draws. In brackets: exact limits of this share.`
      : '',
    columns: [...words('design'), ...ofFigures(...labelsOf(compared, differences))],
    rows: drawn
      ? Object.entries(differences).map(([name, each]): Cell[] => [
          name,
          ...compared.map((measure) => acrossDrawsText(measure, each[measure], made.confidence)),
        ])
      : [],
  }
}

/** The same in a sentence for each design, of the first measure that a line is bought for. */
export function acrossDrawsSentences({ drawn, differences, compared, made }: CompareResult): string[] {
  const [first] = compared
  if (!drawn || first === undefined) return []
  return sentences(
    ...Object.entries(differences).map(([name, figures]) => {
      const said = acrossDrawsText(first, figures[first], made.confidence)
      return (
        said !== null &&
        `In ${counted(drawn.draws, 'draw')} of the uncertain inputs ${name} is ${said}: ${figures[first]!.label}.`
      )
    }),
  )
}
