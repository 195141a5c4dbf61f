/** What holds between the parts of a sweep's document: what it tells of its kind is there, and its places are those of its points. */
import type * as z from 'zod'
import type { CurveResult, EachResult, SweepResult } from './document.js'

type Fault = (message: string, ...path: (string | number)[]) => void

export function sweepRules(document: SweepResult, context: z.RefinementCtx): void {
  const { kind, factors, points, measures, curve, each } = document
  const fault: Fault = (message, ...path) => {
    context.addIssue({ code: 'custom', path, message })
  }
  if (document[kind] === null) fault(`there, for \`kind\` is ${kind}`, kind)
  const least = { curve: 1, grid: 2, each: 0, plan: 1 }[kind]
  if (factors.length < least) fault(`at least ${least}`, 'factors')
  for (const index of points.keys()) pointOf(document, index, fault)
  for (const [index, { values, si, minutes }] of factors.entries())
    if (si.values.length !== values.length || (minutes && minutes.length !== values.length))
      fault('with as many `si.values` and `minutes` as `values`', 'factors', index)
  for (const { name } of measures)
    if (document[kind] !== null && !hasMeasure(document, name)) fault(`with ${name}`, kind)
  if (curve) placesOf(curve, points.length, fault)
  if (each) inputsOf(each, fault)
}

/** A point lies at values of the factors, and has all figures. */
function pointOf({ kind, factors, points, measures }: SweepResult, index: number, fault: Fault): void {
  const { at, measures: figures } = points[index]!
  if (measures.some(({ name }) => !Object.hasOwn(figures, name)))
    fault('figures of all `measures`', 'points', index, 'measures')
  if (kind === 'each') return
  if (at.length !== factors.length) fault('a value of each of `factors`', 'points', index, 'at')
  else if (kind !== 'plan' && at.some((value, place) => !factors[place]!.values.includes(value)))
    fault('values of `factors`', 'points', index, 'at')
}

/** Whether what is told of the kind tells of a measure. */
function hasMeasure({ kind, curve, grid, each, plan }: SweepResult, name: string): boolean {
  const told = { curve: curve?.measures, grid, plan, each: each?.order }[kind]
  return Object.hasOwn(told ?? {}, name)
}

/** Places along the curve are those of points. */
function placesOf({ measures, cost }: CurveResult, count: number, fault: Fault): void {
  const hold = (all: readonly (number | null)[], ...path: string[]) => {
    if (all.some((place) => place !== null && place >= count)) fault('places of `points`', ...path)
  }
  for (const [name, { steps, onward, changes, knee, enough, crossings }] of Object.entries(measures)) {
    const places: [(number | null)[], ...string[]][] = [
      [[...steps, ...onward].flatMap(({ from, to }) => [from, to]), 'steps'],
      [changes.map(({ place }) => place), 'changes'],
      [[knee, enough]],
      [crossings.map(({ from }) => from), 'crossings'],
    ]
    for (const [all, ...key] of places) hold(all, 'curve', 'measures', name, ...key)
  }
  if (cost === null) return
  hold([cost.least, ...cost.notDearer, ...cost.breakEven.map(({ from }) => from)], 'curve', 'cost')
  if (cost.differences.length !== count) fault('one of each of `points`', 'curve', 'cost', 'differences')
}

/** An order names inputs that there are, and tells of each what it differs by. */
function inputsOf({ inputs, order }: EachResult, fault: Fault): void {
  const byPath = new Map(inputs.map((input) => [input.path, input]))
  for (const [measure, paths] of Object.entries(order))
    if (paths.some((path) => !Object.hasOwn(byPath.get(path)?.differences ?? {}, measure)))
      fault('paths of `inputs` that have a difference of that measure', 'each', 'order', measure)
}
