/** Charts of a result, each in a place of its own. */
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { drawInto } from '../../../page/drawing.js'
import type { RunResult } from '../../../questions/run/document.js'
import type { Chart } from '../../../report/marks/chart.js'

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

/** When the browser has nothing else to do; what comes back calls it off. */
function whenIdle(work: () => void): () => void {
  if (!('requestIdleCallback' in window)) {
    const timer = setTimeout(work, 50)
    return () => clearTimeout(timer)
  }
  const asked = requestIdleCallback(work, { timeout: 1000 })
  return () => cancelIdleCallback(asked)
}

interface ChartFigureProps {
  /** Makes the chart; null where there is nothing to show. Asked anew when `of` is another. */
  chart: () => Chart | null
  of: unknown
  /** Whether it stands under a title of its own. */
  isTitled: boolean
}

/** A chart of the report in the page, drawn anew where its figures change; its room stays. */
function ChartFigure({ chart: make, of, isTitled }: ChartFigureProps) {
  const figure = useRef<HTMLElement>(null)
  const remove = useRef<() => void>(() => {})
  const title = useSignal('')
  useEffect(
    () =>
      whenIdle(() => {
        const chart = make()
        const drawnInto = figure.current
        if (!drawnInto) return
        const box = drawnInto.querySelector<HTMLElement>('.box')!
        box.style.minHeight = `${box.offsetHeight}px`
        remove.current()
        drawnInto.hidden = chart === null
        remove.current = chart ? drawInto(drawnInto, chart) : () => {}
        title.value = chart?.title ?? ''
        box.style.minHeight = ''
      }),
    [of],
  )
  useEffect(() => () => remove.current(), [])
  return (
    <figure ref={figure} class="drawn">
      {isTitled ? (
        <div class="head">
          <h3>{title.value}</h3>
        </div>
      ) : null}
      <div class="box" />
    </figure>
  )
}
