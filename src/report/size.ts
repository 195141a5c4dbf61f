/** What the report of a sizing says: the pick, its margin, the next cheaper one and by how much it fails, what limits it. */
import type { EquipmentResult } from '../study/line-result.js'
import type { PromiseResult, SizedDesign, SizeResult } from '../study/size-result.js'
import { closingOf } from './closing.js'
import type { Report, Table } from './content.js'
import { flowText } from './flow.js'
import {
  counted,
  durationText,
  figureText,
  grouped,
  percentText,
  printedUnit,
  shareOfShifts,
} from './format.js'
import { sizeRecord } from './record.js'
import { within } from './sections.js'
import { besideCost, butCannotWork, isCostInPart } from './warnings.js'

/** The report of a sizing. */
export function sizeReport(result: SizeResult): Report {
  const { made, shift } = result
  return {
    title: made.scenario.title,
    subtitle: `${counted(result.all, 'design')} of ${counted(result.choices.length, 'choice')}, on the same random numbers, up to ${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : `shifts of ${durationText(shift.length)}`} each, seed "${made.seed}".`,
    headline: headline(result),
    certainty: certainty(result),
    tables: [pickTable(result), designTable(result), choiceTable(result)]
      .filter(({ rows }) => rows.length > 0)
      .map((table) => within('designs', table)),
    limits: limits(result),
    ...closingOf(made, result.assumed, 'Assumed of the scenario, because it does not say'),
    ...sizeRecord(result, headline(result)),
  }
}

const setText = (set: Record<string, unknown>): string =>
  Object.entries(set)
    .map(([path, value]) => `${path} = ${flowText(value)}`)
    .join(', ')

const promisesText = ({ promises }: SizeResult) => promises.map(({ promise }) => promise).join(' and ')

/** A promise's figure of a design: `96 % (94 to 98 %)`, `12.3 ± 0.4 min`. */
const kept = (design: SizedDesign, index: number, { promises, display }: SizeResult): string => {
  const figure = design.promises[index]
  if (figure === undefined || figure.mean === null) return '–'
  const { unit } = promises[index]!
  return unit === 'share' ? shareOfShifts(figure) : figureText(figureOf(figure, unit), display)
}

const figureOf = (
  { mean, low, high }: SizedDesign['promises'][number],
  unit: string,
): Parameters<typeof figureText>[0] => ({ mean, low, high, sd: null, n: 0, unit, label: '' })

const moneyText = (cost: number, { currency }: SizeResult) => `${grouped(cost, 2)} ${currency}`

/** Money that a difference of this size does not show in. */
const noMoney = 0.005

function headline(result: SizeResult): string[] {
  const { pick, designs, picked, display } = result
  if (pick === null) return [noPick(result)]
  const design = designs[pick]!
  const isPriced = design.cost !== null && !isCostInPart(result)
  const lines = [
    `Choose ${setText(design.set)}: ${isPriced ? 'the cheapest design' : 'the first design in the order below'} that holds ${promisesText(result)}${butCannotWork(result, 'it')}.${isPriced ? ` By hand a shift costs ${moneyText(design.cost!, result)}.` : ''} ${besideCost(result)}`.trimEnd(),
    `Its margin: ${marginsOf(design, result)}.`,
  ]
  if (picked)
    lines.push(
      `Over ${counted(picked.shifts, 'shift')} it puts out ${figureText(picked.measures.throughput, display)}, ${figureText(picked.measures.output, display)} a shift. ${limiting(picked)}`.trimEnd(),
    )
  lines.push(...cheaperOnes(result, design))
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
    return `No design is chosen: ${counted(open.length, 'design')} could not be told in ${grouped(result.made.shifts, 0)} shifts, and the others do not hold ${promisesText(result)}. Allow more --shifts, or count more as either with "within".`
  return `None of the ${counted(result.all, 'design')} holds ${promisesText(result)}: widen the choices.`
}

/** What a design has to spare of each promise, or falls short by: `88 % (85 to 90 %) of 603 shifts, 3 points to spare`. */
function marginsOf(design: SizedDesign, result: SizeResult): string {
  const { promises } = result
  const parts = promises.map((promise, index) => {
    const { mean } = design.promises[index] ?? { mean: null }
    const name = promises.length > 1 ? `${promise.promise}: ` : ''
    const figure = kept(design, index, result)
    if (mean === null) return `${name}${figure}`
    const spare = promise.isLeast ? mean - promise.value : promise.value - mean
    const amount = amountText(Math.abs(spare), promise, result)
    const verdict = /^0(\.0+)? /.test(`${amount} `)
      ? 'just what is asked'
      : `${amount} ${spare < 0 ? 'short' : 'to spare'}`
    const nearness =
      Math.abs(spare) < promise.near
        ? `, within the ${amountText(promise.near, promise, result)} that may go either way`
        : ''
    return `${name}${figure}, ${verdict}${nearness}`
  })
  return `${parts.join('; ')}, in ${counted(design.shifts, 'shift')}`
}

/** A difference of a promise's figure: `3 points`, `0.12 cases/min`. */
function amountText(amount: number, { unit }: PromiseResult, { display }: SizeResult): string {
  const digits = (value: number) => String(Number(value.toPrecision(value < 10 ? 1 : 2)))
  if (unit === 'share') {
    const points = digits(amount * 100)
    return `${points} ${points === '1' ? 'point' : 'points'}`
  }
  const { factor, word } = printedUnit(unit, display)
  return `${Number((amount * factor).toPrecision(2))} ${word}`.trimEnd()
}

/** The nearest ones before the pick that were simulated and refused: in the order, and of those that cost less. */
function cheaperOnes(result: SizeResult, pick: SizedDesign): string[] {
  const { designs, nextCheaper } = result
  if (nextCheaper === null)
    return [
      pick.place === 1
        ? pick.cost === null || isCostInPart(result)
          ? 'It is the first of all in the order.'
          : 'No design costs less.'
        : isCostInPart(result)
          ? 'Pencil and paper rule out all before it in the order.'
          : 'No cheaper design was simulated: it is the cheapest of all that pencil and paper do not rule out.',
    ]
  const saved = (design: SizedDesign) =>
    design.cost === null || pick.cost === null ? null : pick.cost - design.cost
  const tell = (design: SizedDesign, which: string, price: string) =>
    `${which}, with ${differing(design, pick)},${price} does not hold it: ${marginsOf(design, result)}.`
  const next = designs[nextCheaper]!
  const amount = saved(next)
  const simulated = 'The next cheaper one that was simulated'
  if (amount === null) return [tell(next, 'The next one before it that was simulated', '')]
  const less = (design: SizedDesign) => ` costs ${moneyText(saved(design)!, result)} a shift less and`
  if (amount >= noMoney) return [tell(next, simulated, less(next))]
  const cheaper = designs.findLast(
    (design) =>
      design.place < pick.place &&
      design.without === null &&
      design.verdict === 'refused' &&
      (saved(design) ?? 0) >= noMoney,
  )
  return [
    tell(next, 'The next one before it', ' costs the same and'),
    ...(cheaper ? [tell(cheaper, simulated, less(cheaper))] : []),
  ]
}

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
  return `What limits it is ${bottleneck}, which by hand has least to spare: ${topStates(piece)}.`
}

/** The three states that take most of its time. */
function topStates({ states }: EquipmentResult): string {
  return Object.values(states)
    .filter(({ mean }) => (mean ?? 0) > 0)
    .sort((a, b) => b.mean! - a.mean!)
    .slice(0, 3)
    .map(
      ({ label, mean }) =>
        `${label.slice(label.indexOf(': ') + 2)} ${percentText(Number(mean!.toPrecision(2)))}`,
    )
    .join(', ')
}

/** A promise with another value: `9 cases/min in at least 89 % of shifts`. */
function promiseAt(promise: PromiseResult, by: number, result: SizeResult): string {
  const { value, unit, isLeast, measure } = promise
  const at = isLeast ? value + by : value - by
  // where the test itself ends halfway to none or all
  const level = unit === 'share' ? Math.max(value / 2, Math.min((1 + value) / 2, at)) : at
  const { factor, word } = printedUnit(unit, result.display)
  const text = `at ${isLeast ? 'least' : 'most'} ${Number((level * factor).toPrecision(4))} ${word}`.trimEnd()
  const inShifts = /^(.*?)\s+in\s+.+?\s+(of\s+(?:the\s+)?shifts)$/.exec(promise.promise)
  return inShifts ? `${inShifts[1]} in ${text} of shifts` : `${measure} ${text}`
}

function certainty(result: SizeResult): string[] {
  const { made, promises, spent, all, isFull, designs } = result
  const without = designs.filter((each) => each.without !== null).length
  const everyOne = `all ${grouped(all, 0)} designs for ${grouped(made.shifts, 0)} shifts each would be ${grouped(all * made.shifts, 0)} shifts`
  const search = isFull
    ? `Every design was simulated for ${grouped(made.shifts, 0)} shifts and judged by its figure alone: ${grouped(spent.shifts, 0)} shifts. How sure that is was not worked out.`
    : `It took ${counted(spent.designs, 'design')} and ${counted(spent.shifts, 'shift')}${without > 0 ? `; ${counted(without, 'design')} more ${without === 1 ? 'was' : 'were'} refused without simulating` : ''} (${everyOne}).`
  const better = promises.map((promise) => promiseAt(promise, promise.near, result)).join(' and ')
  const worse = promises.map((promise) => promiseAt(promise, -promise.near, result)).join(' and ')
  const sure = isFull
    ? []
    : [
        `${percentText(made.confidence)} confidence in the whole procedure: simulating refused no design before the pick that keeps ${better}, and the pick keeps ${worse}. What lies between may go either way. (Sequential tests after Wald, all designs on the same random numbers, the risk shared out among them.)`,
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

/** The end of each path that tells it from the other choices: `infeed.length`, `belt-speed`. */
function shortNames(paths: readonly string[]): string[] {
  const endOf = (path: string, steps: number) => path.split('.').slice(-steps).join('.')
  return paths.map((path) => {
    for (let steps = 1; ; steps++) {
      const end = endOf(path, steps)
      if (end === path || paths.filter((other) => endOf(other, steps) === end).length === 1) return end
    }
  })
}

const verdictWords = { accepted: 'holds', refused: 'fails', undecided: 'not told' }

function designTable(result: SizeResult): Table {
  const { designs, choices, pick, promises, currency } = result
  const told = designs
    .map((design, index) => ({ design, index }))
    .filter(({ design }) => design.without === null)
  const upTo = pick === null ? told : told.filter(({ index }) => index <= pick)
  const shown = upTo.slice(-mostRows)
  const isAlike = (path: string) =>
    new Set(shown.map(({ design }) => JSON.stringify(design.set[path]))).size === 1
  const names = shortNames(choices.map(({ path }) => path))
  const unlike = choices.flatMap(({ path }, index) => (isAlike(path) ? [] : [{ path, name: names[index]! }]))
  const columns =
    unlike.length > 0 ? unlike : choices.map(({ path }, index) => ({ path, name: names[index]! }))
  const alike = Object.fromEntries(
    choices
      .filter(({ path }) => columns.every((each) => each.path !== path))
      .map(({ path }) => [path, shown[0]!.design.set[path]]),
  )
  const isPriced = shown.some(({ design }) => design.cost !== null)
  const notes = [
    ...(shown.length < upTo.length ? [`The last ${mostRows} of ${upTo.length} up to the pick.`] : []),
    ...(pick !== null && upTo.length < told.length
      ? [
          `${counted(told.length - upTo.length, 'simulated design')} that ${told.length - upTo.length === 1 ? 'costs' : 'cost'} more and all others that were told stand in designs.csv.`,
        ]
      : []),
    ...(columns.length > 1 ? [`A design is ${columns.map(({ name }) => name).join(', ')}.`] : []),
    ...(Object.keys(alike).length > 0 ? [`In all of these ${setText(alike)}.`] : []),
  ]
  return {
    title: 'Designs that were simulated, in order of cost',
    note: notes.join(' '),
    columns: [
      columns.length > 1 ? 'design' : columns[0]!.name,
      ...(isPriced ? [`cost, ${currency}`] : []),
      ...promises.map(({ promise, measure, unit }) =>
        promises.length === 1 && unit === 'share' ? 'holds it in' : unit === 'share' ? promise : measure,
      ),
      'shifts',
      'verdict',
    ],
    words: ['verdict'],
    rows: shown.map(({ design, index }) => [
      columns.map(({ path }) => flowText(design.set[path])).join(', '),
      ...(isPriced ? [design.cost === null ? '–' : grouped(design.cost, 2)] : []),
      ...promises.map((_, each) => kept(design, each, result)),
      grouped(design.shifts, 0),
      index === pick ? 'the pick' : verdictWords[design.verdict],
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

function limits({ notes, order, rising, isFull, shift }: SizeResult): string[] {
  return [
    ...notes,
    `Designs stand in order of: ${order.join(', then ')}. ${order[0] === 'cost' ? 'The cost is worked out by hand for the promised rate, stops left out; what is not priced does not count.' : 'Nothing is priced, so the cheapest is the first in that order.'}`,
    ...(rising.length > 0 ? [`Taken as known: more of ${rising.join(', ')} never hurts.`] : []),
    ...(isFull
      ? []
      : [
          'A design is simulated until its verdict is clear, so the figures of designs lean a little to the side of their verdicts: for one to plan with, simulate the pick with `run`.',
        ]),
    ...(shift.campaign > 1
      ? ['Shifts follow each other in campaigns: a share of shifts is one of campaigns.']
      : []),
    'Jam, roll-change and breakdown figures are inputs: no published data on tape sealers is known. A design is as good as what was measured for them.',
  ]
}
