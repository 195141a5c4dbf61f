/** Charts of a result, each in a place of its own. */
import type { RunResult } from '../../../questions/run/document.js'
import type { Chart } from '../../../report/marks/chart.js'
import { ChartFigure } from './chart-figure.js'

export type ChartsOf = (result: RunResult) => Chart | readonly Chart[] | null

/** At most so many. */
export function Charts({ result, charts, most }: { result: RunResult; charts: ChartsOf; most: number }) {
  const places = Array.from({ length: most }, (_, index) => index)
  return (
    <>
      {places.map((place) => (
        <ChartFigure
          key={place}
          of={result}
          isTitled={most > 1}
          chart={() => [charts(result) ?? []].flat()[place] ?? null}
        />
      ))}
    </>
  )
}
