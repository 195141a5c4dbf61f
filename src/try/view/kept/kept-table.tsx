/** The table of designs that are kept: the line as it came first, then each with its figures and what differs from it. */
import type { MeasureKey } from '../../../catalogue/of-line.js'
import type { Display } from '../../../catalogue/printed-units.js'
import { briefly } from '../../../catalogue/unit-name.js'
import type { CompareResult, DesignResult } from '../../../questions/compare/document.js'
import { figureText } from '../../../report/format.js'
import { cameAs } from '../../pins.js'
import type { Pin } from '../../study/messages.js'
import { DifferenceWords } from '../answer/answer.js'
import { differenceTold, looked } from '../answer/figures-told.js'
import type { Desk } from '../desk/desk.js'
import { dropped, renamed } from '../desk/kept.js'

/** Measures that designs are compared by, as far as the line has them. */
const measures = looked.slice(0, 3)

/** Money without saying again that it is of 1000 cases: the head of the column does. */
function figureIn({ measures: all }: DesignResult, measure: MeasureKey, display: Display): string {
  const figure = all[measure]
  return figureText(figure && briefly(figure), display)
}

interface KeptTableProps {
  desk: Desk
  pins: readonly Pin[]
}

export function KeptTable({ desk, pins }: KeptTableProps) {
  const compared = desk.pinned.value?.compared ?? null
  const came = compared?.variants[cameAs]
  const shown = measures.filter(([measure]) => !came || came.measures[measure] !== undefined)
  return (
    <div class="wide">
      <table class="as-cards" aria-label="Kept designs">
        <thead>
          <tr>
            <th scope="col">Design</th>
            {shown.map(([measure, label]) => (
              <th scope="col" key={measure}>
                {label}
              </th>
            ))}
            <th scope="col">
              <span class="unseen">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">as it came</th>
            <Figures {...{ compared, shown, name: cameAs }} />
            <td class="words acts-of-row none" />
          </tr>
          {pins.map((pin) => (
            <Row key={pin.name} {...{ desk, pin, compared, shown }} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

interface RowProps {
  desk: Desk
  pin: Pin
  compared: CompareResult | null
  shown: typeof measures
}

function Row({ desk, pin, compared, shown }: RowProps) {
  return (
    <tr>
      <th scope="row">
        <input
          type="text"
          class="name"
          aria-label={`Name of ${pin.name}`}
          value={pin.name}
          maxLength={36}
          onChange={({ currentTarget }) => {
            currentTarget.value = renamed(desk, pin, currentTarget.value)
          }}
        />
      </th>
      <Figures {...{ compared, shown, name: pin.name }} />
      <td class="words acts-of-row">
        <button type="button" onClick={() => desk.take(pin.text, `kept ${pin.name}`)}>
          Open<span class="unseen"> {pin.name}</span>
        </button>{' '}
        <button type="button" onClick={() => dropped(desk, pin)}>
          Drop<span class="unseen"> {pin.name}</span>
        </button>
      </td>
    </tr>
  )
}

/** The figures of a design, and what differs from the line as it came. */
function Figures({ compared, shown, name }: Pick<RowProps, 'compared' | 'shown'> & { name: string }) {
  const design = compared?.variants[name]
  return (
    <>
      {shown.map(([measure, label]) => {
        const differs = compared?.differences[name]?.[measure]
        return (
          <td key={measure} data-head={label}>
            {design ? figureIn(design, measure, compared!.display) : '–'}{' '}
            {differs ? (
              <span class="differs">
                <DifferenceWords {...differenceTold(measure, differs, compared!.display)} />
              </span>
            ) : null}
          </td>
        )
      })}
    </>
  )
}
