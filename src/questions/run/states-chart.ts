/** Chart of the states: how each machine spends the shift, as one bar of 100 % per machine. */
import type { ChartConfiguration, Plugin } from 'chart.js'
import { type StateKey, stateLabel } from '../../catalogue/states.js'
import {
  axisTitle,
  belowHeight,
  type Chart,
  chartWidth,
  foot,
  frame,
  headHeight,
  legend,
  legendHeight,
  palette,
  percent,
  tickFont,
  widthOf,
  wrapped,
  written,
} from '../../report/marks/chart.js'
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

/** States on which white letters are read better than black ones. */
const darkStates: ReadonlySet<StateKey> = new Set<StateKey>([
  'working',
  'jam-being-cleared',
  'size-being-set',
  'breakdown-being-repaired',
  'blade-service',
  'planned-stop',
  'blocked',
])

/** A state that no machine is in for longer than this share of the shift has no entry in the legend. */
const leastShown = 0.0005

/** Between the subtitle and the legend, px. */
const gap = 2

/** From left to right: work, what stops it, then the time in which the machine itself is well. */
const order = Object.keys(colours) as StateKey[]

/** Stacked shares of the states of each machine; null where the line has no equipment. */
export function statesChart(result: RunResult): Chart | null {
  const machines = Object.entries(result.equipment)
  const share = (machine: number, key: StateKey) => machines[machine]![1].states[key]?.mean ?? 0
  const occurring = order.filter((key) => machines.some((_, machine) => share(machine, key) > 0))
  const shown = new Set(
    occurring.filter((key) => machines.some((_, machine) => share(machine, key) > leastShown)),
  )
  if (machines.length === 0) return null
  const title = 'What each machine does, % of the shift'
  const subtitle = 'A machine is in one state at a time. Mean over the shifts.'
  const options = frame(title, subtitle, gap)
  const config: ChartConfiguration<'bar'> = {
    type: 'bar',
    data: {
      labels: machines.map(([name]) => wrapped(name, 24)),
      datasets: occurring.map((key) => ({
        label: stateLabel(key),
        data: machines.map((_, machine) => share(machine, key) * 100),
        backgroundColor: colours[key]!,
        borderColor: key === 'on-break' ? palette.frame : palette.paper,
        borderWidth: key === 'on-break' ? 1 : { right: 0.5 },
        borderSkipped: false,
        barPercentage: 0.78,
        categoryPercentage: 0.9,
      })),
    },
    options: {
      ...options,
      indexAxis: 'y',
      plugins: {
        ...options.plugins,
        legend: {
          ...legend,
          labels: {
            ...legend.labels,
            filter: ({ datasetIndex }) => shown.has(occurring[datasetIndex ?? -1]!),
          },
        },
      },
      scales: {
        x: {
          stacked: true,
          min: 0,
          max: 100,
          title: axisTitle('% of the shift'),
          ticks: { stepSize: 10, color: palette.quietInk, font: tickFont },
          grid: { color: palette.grid },
          border: { color: palette.frame },
        },
        y: {
          stacked: true,
          ticks: { color: palette.ink, autoSkip: false, font: tickFont },
          grid: { display: false },
          border: { color: palette.frame },
        },
      },
    },
    plugins: [shareLetters(occurring), foot(result)],
  }
  const words = machines.map(([name], machine) => `${name}: ${inWords(machine)}`)
  return {
    name: 'states',
    title,
    alt: `Shares of the shift by state: ${words.join('; ')}.`,
    width: chartWidth,
    height:
      headHeight(title, subtitle, gap) +
      legendHeight([...shown].map((key) => stateLabel(key))) +
      machines.length * 42 +
      belowHeight,
    config: config as ChartConfiguration,
  }

  /** Work first, then the states that take most of the rest: two, or one where many machines are told of. */
  function inWords(machine: number): string {
    const others = occurring
      .filter((key) => key !== 'working' && share(machine, key) > leastShown)
      .sort((a, b) => share(machine, b) - share(machine, a))
    return [...(['working'] as const), ...others.slice(0, machines.length > 6 ? 1 : 2)]
      .map((key) => `${stateLabel(key)} ${percent(share(machine, key))}`)
      .join(', ')
  }
}

/** Writes the share into each piece of a bar that is wide enough for it. */
function shareLetters(keys: readonly StateKey[]): Plugin<'bar'> {
  return {
    id: 'share-letters',
    afterDatasetsDraw(chart) {
      const { ctx } = chart
      for (const [index, key] of keys.entries()) {
        const colour = darkStates.has(key) ? palette.paper : palette.ink
        for (const [machine, bar] of chart.getDatasetMeta(index).data.entries()) {
          const text = percent((chart.data.datasets[index]!.data[machine] as number) / 100)
          const { x, y, base } = bar.getProps(['x', 'y', 'base'], true) as {
            x: number
            y: number
            base: number
          }
          if (x - base < widthOf(ctx, text, { size: 11 }) + 6) continue
          written(ctx, text, (x + base) / 2, y + 4, { size: 11, colour, align: 'center' })
        }
      }
    },
  }
}
