/** What the page of a run shows first: rate, output, how often the target is reached, what 1000 cases cost, and the picture of the verdict. */
import { casesText, shiftTarget } from '../../answers/shift-target.js'
import { mostTiles, tilesFor } from '../../answers/tiles.js'
import { cannotWork, costWords } from '../../answers/warnings.js'
import { rateText } from '../../report/format.js'
import type { Shown } from '../../report/front.js'
import type { Tone } from '../../report/screen.js'
import { demandName, hasDemand } from './demand-chart.js'
import type { RunResult } from './document.js'
import { onAverage } from './summary.js'

export function runFront(result: RunResult): Shown {
  const { measures, target, display } = result
  const asked = shiftTarget(result)
  const tiles = tilesFor(display)
  const delay = tiles('Time in the line', measures['time-in-system'], { note: 'on average' })
  const isUnsealed = (measures.unsealed?.mean ?? 0) > 0
  return {
    tiles: [
      ...tiles('Good cases out', measures.throughput, {
        note: target === null ? 'no target is given' : `target ${rateText(target)}`,
        tone: toneOf(result),
      }),
      ...tiles('Good cases a shift', measures.output, {
        note: asked ? `target ${casesText(asked.cases)}` : '',
      }),
      ...(target === null ? delay : tiles('Shifts that reach the target', measures['target-held'])),
      ...tiles('1000 cases cost', measures['cost-per-1000'], { note: costWords('', result).trim() }),
      ...(target === null ? [] : delay),
    ].slice(0, mostTiles),
    told: ['Cost', ...(isUnsealed ? [] : ['Shift'])],
    // what reaches the target; or where it is lost
    picture: onAverage(result) !== 'holds' && hasDemand(result) ? demandName : 'output',
  }
}

function toneOf(result: RunResult): Tone {
  const found = onAverage(result)
  if (found === null) return 'plain'
  if (found === 'holds' && !cannotWork(result)) return 'good'
  return found === 'falls short' || cannotWork(result) ? 'error' : 'warning'
}
