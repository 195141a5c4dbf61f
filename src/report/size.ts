/** What the report of a sizing says: the pick, its margin, the next cheaper one and by how much it fails, what limits it. */
import type { EquipmentResult } from '../study/line-result.js'
import type { PromiseResult, SizedDesign, SizeResult } from '../study/size-result.js'
import { closingOf } from './closing.js'
import type { Report, Table } from './content.js'
import { flowText } from './flow.js'
import { counted, durationText, figureText, grouped, shareOfShifts } from './format.js'

const percent = (share: number) => `${Number((share * 100).toPrecision(4))} %`

/** The report of a sizing. */
export function sizeReport(result: SizeResult): Report {
  const { made, shift } = result
  return {
    title: made.scenario.title,
    subtitle: `${counted(result.all, 'design')} of ${counted(result.choices.length, 'choice')}, on the same random numbers, up to ${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : `shifts of ${durationText(shift.length)}`} each, seed "${made.seed}".`,
    headline: headline(result),
    certainty: certainty(result),
    tables: [pickTable(result), designTable(result), choiceTable(result)].filter(
      ({ rows }) => rows.length > 0,
    ),
    limits: limits(result),
    ...closingOf(made, result.assumed, 'Assumed of the scenario, because it does not say'),
  }
}

const setText = (set: Record<string, unknown>): string =>
  Object.entries(set)
    .map(([path, value]) => `${path} = ${flowText(value)}`)
    .join(', ')

const promisesText = ({ promises }: SizeResult) => promises.map(({ promise }) => promise).join(' and ')

/** A promise's figure of a design: `96 % (94 to 98 %)`, `12.3 ± 0.4 min`. */
const kept = (design: SizedDesign, index: number, { promises, display }: SizeResult): string => {
  const { mean, low, high } = design.promises[index] ?? { mean: null, low: null, high: null }
  const { unit } = promises[index]!
  return unit === 'share'
    ? shareOfShifts({ mean, low, high })
    : figureText({ mean, low, high, sd: null, n: 0, unit, label: '' }, display)
}

const moneyText = (cost: number, { currency }: SizeResult) => `${grouped(cost, 2)} ${currency}`

function headline(result: SizeResult): string[] {
  const { pick, designs, nextCheaper, picked, display } = result
  if (pick === null) return [noPick(result)]
  const design = designs[pick]!
  const cost = design.cost === null ? '' : `, for ${moneyText(design.cost, result)} a shift by hand`
  const lines = [
    `Choose ${setText(design.set)}: the cheapest design that holds ${promisesText(result)}${cost}.`,
  ]
  const margins = result.promises.map((promise, index) => marginOf(promise, kept(design, index, result)))
  lines.push(
    `Its margin: ${margins.join('; ')}, in the ${counted(design.shifts, 'shift')} that it took to tell.`,
  )
  if (picked)
    lines.push(
      `In ${counted(picked.shifts, 'shift')} of its own it puts out ${figureText(picked.measures.throughput, display)}, ${figureText(picked.measures.output, display)} a shift. ${limiting(picked)}`,
    )
  if (nextCheaper !== null) {
    const next = designs[nextCheaper]!
    const saved =
      next.cost === null || design.cost === null
        ? ''
        : ` ${moneyText(design.cost - next.cost, result)} a shift cheaper`
    lines.push(
      `The next cheaper one that was simulated, ${differing(next, design)}, is${saved || ' cheaper'} and does not hold it: ${result.promises.map((promise, index) => marginOf(promise, kept(next, index, result))).join('; ')}.`,
    )
  } else
    lines.push(
      'No cheaper design was simulated: it is the cheapest of all that pencil and paper do not rule out.',
    )
  const open = designs.filter(({ verdict }, index) => verdict === 'undecided' && index < pick)
  if (open.length > 0)
    lines.push(
      `Not told in ${grouped(result.made.shifts, 0)} shifts, and passed over: ${open.map((each) => `${setText(each.set)} (${kept(each, 0, result)})`).join('; ')}. Allow more --shifts, or count more as either with "within".`,
    )
  return lines
}

function noPick(result: SizeResult): string {
  const open = result.designs.filter(({ verdict }) => verdict === 'undecided')
  if (open.length > 0)
    return `No design is chosen: ${counted(open.length, 'design')} could not be told in ${grouped(result.made.shifts, 0)} shifts, and the others do not hold ${promisesText(result)}. Allow more --shifts.`
  return `None of the ${counted(result.all, 'design')} holds ${promisesText(result)}: widen the choices.`
}

/** `asked for 95 % of the shifts, it is 97 % (95 to 98 %)`. */
const marginOf = ({ value, unit, isLeast, promise }: PromiseResult, is: string): string =>
  unit === 'share'
    ? `${is} of the shifts where ${percent(value)} are asked for`
    : `${is}, ${isLeast ? 'at least' : 'at most'} what ${promise} asks`

/** What of a design is not as in the pick. */
const differing = ({ set }: SizedDesign, pick: SizedDesign): string =>
  setText(
    Object.fromEntries(
      Object.entries(set).filter(([path, value]) => JSON.stringify(value) !== JSON.stringify(pick.set[path])),
    ),
  )

/** The piece with least to spare, and what it does. */
function limiting({ bottleneck, equipment }: NonNullable<SizeResult['picked']>): string {
  const piece = bottleneck === null ? undefined : equipment[bottleneck]
  if (!piece) return ''
  return `${bottleneck} has least to spare: ${topStates(piece)}.`
}

/** The three states that take most of its time. */
function topStates({ states }: EquipmentResult): string {
  return Object.values(states)
    .filter(({ mean }) => (mean ?? 0) > 0)
    .sort((a, b) => b.mean! - a.mean!)
    .slice(0, 3)
    .map(
      ({ label, mean }) => `${label.slice(label.indexOf(': ') + 2)} ${percent(Number(mean!.toPrecision(2)))}`,
    )
    .join(', ')
}

function certainty(result: SizeResult): string[] {
  const { made, promises, spent, all, isFull, designs } = result
  const near = promises.map(
    ({ promise, near, unit }) =>
      `${promise} by more than ${unit === 'share' ? `${Number((near * 100).toPrecision(3))} points` : near}`,
  )
  const without = designs.filter((each) => each.without !== null).length
  const search = isFull
    ? `Every design was simulated for ${grouped(made.shifts, 0)} shifts and judged by its figure alone: ${grouped(spent.shifts, 0)} shifts.`
    : `It took ${counted(spent.designs, 'design')} and ${counted(spent.shifts, 'shift')}, ${grouped(without, 0)} more designs were refused without simulating; all ${grouped(all, 0)} designs at 1000 shifts each would be ${grouped(all * 1000, 0)} shifts.`
  const sure = isFull
    ? []
    : [
        `${percent(made.confidence)} confidence in the whole procedure: no cheaper design that keeps ${near.join(' and ')} was refused, and the pick does not miss it by more. What lies within that may go either way. (Sequential tests after Wald, all designs on the same random numbers, the risk shared out among them.)`,
      ]
  return [...sure, search]
}

function pickTable(result: SizeResult): Table {
  const { pick, designs, choices } = result
  const design = pick === null ? undefined : designs[pick]
  return {
    title: 'The pick',
    note: '',
    columns: ['choice', 'value', 'chosen from'],
    words: ['value', 'chosen from'],
    rows: design
      ? choices.map(({ path, values }) => [path, flowText(design.set[path]), rangeText(values)])
      : [],
  }
}

const rangeText = (values: readonly unknown[]): string =>
  values.length > 6
    ? `${flowText(values[0])}, ${flowText(values[1])} … ${flowText(values.at(-1))} (${values.length} values)`
    : values.map(flowText).join(', ')

/** Designs nearest to the pick in cost, the last of them the pick. */
const mostRows = 12

function designTable(result: SizeResult): Table {
  const { designs, choices, pick, promises } = result
  const told = designs
    .map((design, index) => ({ design, index }))
    .filter(({ design }) => design.without === null)
  const upTo = pick === null ? told : told.filter(({ index }) => index <= pick)
  const shown = upTo.slice(-mostRows)
  return {
    title: 'Designs that were simulated, in order of cost',
    note:
      shown.length < upTo.length ? `The last ${mostRows} of ${upTo.length}; all stand in designs.csv.` : '',
    columns: [
      ...choices.map(({ path }) => path),
      'cost of a shift',
      ...promises.map(({ promise }) => promise),
      'shifts',
      'verdict',
    ],
    words: ['verdict'],
    rows: shown.map(({ design, index }) => [
      ...choices.map(({ path }) => flowText(design.set[path])),
      design.cost === null ? '–' : moneyText(design.cost, result),
      ...promises.map((_, each) => kept(design, each, result)),
      grouped(design.shifts, 0),
      index === pick
        ? 'the pick'
        : design.verdict === 'refused'
          ? 'does not hold it'
          : design.verdict === 'accepted'
            ? 'holds it'
            : 'not told',
    ]),
  }
}

/** Why designs were refused without simulating. */
function choiceTable({ designs }: SizeResult): Table {
  const reasons = new Map<string, number>()
  for (const { without } of designs)
    if (without !== null) {
      const reason = without.startsWith('no better than') ? 'no better than one that was refused' : without
      reasons.set(reason, (reasons.get(reason) ?? 0) + 1)
    }
  return {
    title: 'Refused without simulating',
    note: '',
    columns: ['reason', 'designs'],
    rows: [...reasons].map(([reason, count]) => [reason, grouped(count, 0)]),
  }
}

function limits({ notes, order, rising }: SizeResult): string[] {
  return [
    ...notes,
    `Designs stand in order of: ${order.join(', then ')}. ${order[0] === 'cost' ? 'The cost is worked out by hand for the promised rate, stops left out; what is not priced does not count.' : 'Nothing is priced, so the cheapest is the first in that order.'}`,
    ...(rising.length > 0 ? [`Taken as known: more of ${rising.join(', ')} never hurts.`] : []),
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A design is as good as what was measured for them.',
  ]
}
