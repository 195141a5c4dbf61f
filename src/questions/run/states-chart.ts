/** Chart of the states: how each machine spends the shift, as one bar of 100 % per machine. */
import { shownName } from '../../answers/line-result.js'
import { type StateKey, stateLabel, states } from '../../catalogue/states.js'
import { percent } from '../../report/format.js'
import { numbers } from '../../report/marks/axis.js'
import { pieceWords, stacked, stackedBars } from '../../report/marks/bars.js'
import { wrapped } from '../../report/marks/breaking.js'
import { type Chart, chartOf } from '../../report/marks/chart.js'
import { palette } from '../../report/marks/inks.js'
import { drawnOf, heaviest } from '../../report/marks/most-rows.js'
import type { RunResult } from './document.js'

/**
 * Colour of each state, the same in every study. A kind of stop has one hue: pale while it waits for crew,
 * full while somebody is at it. Chosen by search: any two are at least 20 apart (CIELAB) for people with full
 * colour vision and, simulated after Machado, Oliveira & Fernandes (2009), for the red-, green- and
 * blue-blind; only the white of the breaks is nearer to the grey of waiting, and has an outline instead.
 */
const colours: Readonly<Record<StateKey, string>> = {
  working: '#2c85db',
  'jam-waiting-for-crew': '#ea9b5f',
  'jam-being-cleared': '#b34218',
  'tape-waiting-for-crew': '#f8de6b',
  'tape-being-changed': '#b6a100',
  'size-waiting-for-crew': '#77ca99',
  'size-being-set': '#005e43',
  'breakdown-waiting-for-crew': '#efa0eb',
  'breakdown-being-repaired': '#631e76',
  'blade-service': '#2c150b',
  'planned-stop': '#4632aa',
  blocked: '#6d7783',
  waiting: '#d3d7dc',
  'on-break': '#ffffff',
}

/** A state that no machine is in for longer than this share of the shift has no entry in the legend. */
const leastShown = 0.0005

/** From left to right: work, what stops it, then the time in which the machine itself is well. */
const order = Object.keys(colours) as StateKey[]

/** Of a machine, by its name: the share of the shift that it spends in a state. */
const machineOf = ([name, machine]: [string, RunResult['equipment'][string]]) => ({
  name,
  shown: shownName(name, machine, 'mean'),
  share: (key: StateKey) => machine.states[key]?.mean ?? 0,
})
type Machine = ReturnType<typeof machineOf>

const stops = order.filter((key) => states[key].group === 'stop')
const stopped = ({ share }: Machine): number => stops.reduce((sum, key) => sum + share(key), 0)

/** The machines that are drawn: all of a few, of many those that are stopped most. */
export const drawnMachines = ({ equipment }: Pick<RunResult, 'equipment'>): readonly Machine[] =>
  heaviest(Object.entries(equipment).map(machineOf), stopped)

/** Stacked shares of the states of each machine; null where the line has no equipment. */
export function statesChart(result: RunResult): Chart | null {
  const machines = drawnMachines(result)
  if (machines.length === 0) return null
  const all = Object.keys(result.equipment).length
  const occurring = order.filter((key) => machines.some(({ share }) => share(key) > 0))
  const isSeen = (key: StateKey) => machines.some(({ share }) => share(key) > leastShown)
  return chartOf(result, {
    name: 'states',
    section: 'machines',
    title: 'What each machine does, % of the shift',
    subtitle: `A machine is in one state at a time. Mean over the shifts.${drawnOf(machines.length, all, 'machines that are stopped most')}`,
    alt: `Shares of the shift by state: ${machines.map(inWords).join('; ')}.`,
    mayNarrow: true,
    gap: 2,
    height: machines.length * 42,
    rows: machines.map(({ shown }) => wrapped(shown, 24)),
    legend: occurring.filter(isSeen).map((key) => stateLabel(key)),
    axes: {
      x: numbers({ title: '% of the shift', min: 0, max: 100, more: stacked, moreOfTicks: { stepSize: 10 } }),
    },
    marks: [
      ...occurring.map((key) =>
        stackedBars(
          stateLabel(key),
          machines.map(({ share }) => share(key) * 100),
          colours[key],
          {
            borderColor: key === 'on-break' ? palette.frame : palette.paper,
            borderWidth: key === 'on-break' ? 1 : { right: 0.5 },
            barPercentage: 0.78,
          },
        ),
      ),
      pieceWords(6, (piece, machine) => [percent(machines[machine]!.share(occurring[piece]!))]),
    ],
  })

  /** Work first, then the states that take most of the rest: two, or one where many machines are told of. */
  function inWords({ shown, share }: Machine): string {
    const others = occurring
      .filter((key) => key !== 'working' && share(key) > leastShown)
      .sort((a, b) => share(b) - share(a))
    const words = (['working', ...others.slice(0, machines.length > 6 ? 1 : 2)] as const).map(
      (key) => `${stateLabel(key)} ${percent(share(key))}`,
    )
    return `${shown}: ${words.join(', ')}`
  }
}
