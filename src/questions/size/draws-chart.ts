/** Chart of the draws of a sizing: what the input that adds most was drawn as, against how well the promise was kept with it. */
import { printedUnit } from '../../catalogue/printed-units.js'
import { percent } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { shortened } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { ruleAcross, shade } from '../../report/marks/rule.js'
import type { SizeDrawn, SizeResult } from './document.js'
import { keptSentences } from './drawn-words.js'
import { promiseTitle, signsOf, verdictPoints } from './marks.js'

/** Place of the input that adds most, by the figure which straight lines in the inputs explain best; the first where none can be told apart. */
function mostAdding({ promises, contributions, inputs }: SizeDrawn): number {
  const told = [...promises, ...contributions].flatMap((each) => (each ? [each] : []))
  const best = told.sort((a, b) => b.explained - a.explained)[0]
  return Math.max(0, inputs.indexOf(best?.shares[0]?.path ?? ''))
}

/** Draws by that input and the figure of the first promise; null where inputs were not drawn. */
export function sizeDrawsChart(result: SizeResult): Chart | null {
  const { drawn, promises, evidence = [], display } = result
  const [promise] = promises
  if (!drawn || !promise) return null
  const at = mostAdding(drawn)
  const path = drawn.inputs[at]
  const told = drawn.each.filter(({ figure }) => figure !== null)
  if (path === undefined || told.length === 0) return null
  const across = printedUnit(evidence.find((each) => each.path === path)?.unit ?? '', display)
  const up = printedUnit(promise.unit, display)
  const asked = promise.value * up.factor
  const near = promise.near * up.factor
  const kept = keptSentences(result)[0]!
  return chartOf(result, {
    name: 'draws',
    section: 'unknown',
    title: kept,
    subtitle: `Each sign is a draw of the uncertain inputs: ${signsOf(told.map(({ verdict }) => verdict))}. Across: ${shortened(path, 60)}, the input that adds most. Up: ${promise.promise} over ${drawn.shifts} shifts of the draw; its verdict may use more shifts. Shaded: close enough to go either way.`,
    alt: `${kept} ${told.length} draws by ${path} and by how well they meet it; the promise is ${promise.unit === 'share' ? percent(promise.value) : asked}.`,
    gap: 16,
    height: { all: 400 },
    axes: {
      x: numbers({
        title: `${shortened(path, 60)}${across.word === '' ? '' : `, ${across.word}`}`,
        isInside: true,
        most: 9,
        isPlain: true,
      }),
      y: numbers({
        title: promiseTitle(promise, up.word),
        most: 8,
        ...(promise.unit === 'share' ? { min: -4, max: 104, isInside: true } : {}),
      }),
    },
    marks: [
      ...verdictPoints(
        (verdict) =>
          told
            .filter((each) => each.verdict === verdict)
            .map(({ inputs, figure }) => ({ x: inputs[at]! * across.factor, y: figure! * up.factor })),
        4,
      ),
      shade('y', asked - near, asked + near),
      ruleAcross(asked),
    ],
  })
}
