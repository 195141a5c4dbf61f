/** The figures that losses are made of: sums over the numbers of a shift, each with an interval of its own. */
import type { Figure } from '../catalogue/figure.js'
import type { FigurePath, MeasureName } from '../catalogue/measures.js'
import { Counted } from '../line/counted.js'
import type { ShiftResult } from '../line/line.js'
import type { Scenario } from '../scenario/schema.js'
import { meanEstimate, ofFew } from '../statistics/estimate.js'
import {
  controlsOf,
  type Estimation,
  estimationOf,
  measureNamed,
  measuresOf,
  type Simulated,
  type StudyMeasure,
  tooFew,
} from './figures.js'
import { figureOf } from './line-result.js'

/** One step down: cases of a shift that are lost to one thing. */
export interface LossStep {
  key: string
  /** Of jams their kind, where it has a name. */
  jam?: string
  label: string
  /** Negative where it adds cases instead. */
  cases: Figure
  /** Of what the machine, or all of them together, could put out. */
  share: number
}

/** What a study asks for. `bottleneck`: the piece with least to spare by hand; it is asked of lines without a sealer. */
export interface LossesAsked extends Omit<Estimation, 'exposure'> {
  bottleneck: string | null
}

/** Numbers by shift. */
export type Series = readonly number[]

/** Reads columns of all shifts and estimates sums of them. */
export class LossStudy {
  readonly scenario: Scenario
  /** Time of what is counted, a shift, s. */
  readonly span: number
  /** What figures were made of, by place. */
  readonly told = new Map<string, Series>()
  private readonly inOne: number
  private readonly places: ReadonlyMap<string, number>
  private readonly controls: ReturnType<typeof controlsOf>
  private readonly measures: readonly StudyMeasure[]
  private readonly shifts: readonly ShiftResult[]

  constructor(
    simulated: Simulated,
    private readonly asked: LossesAsked,
  ) {
    const { scenario, line, shifts, countFrom } = simulated
    this.scenario = scenario
    this.shifts = shifts
    const counted = new Counted(scenario.shift)
    counted.begin(countFrom)
    this.inOne = counted.shifts
    this.span = counted.time / counted.shifts
    this.places = new Map(
      line.columns.map(({ measure, part }, index) => [`${part} ${measure.path.join('.')}`, index]),
    )
    this.measures = measuresOf(simulated)
    this.controls = controlsOf(shifts, estimationOf(scenario, asked, countFrom))
  }

  /** The value of a measure in each shift, 0 where the line has no such measure. */
  read(path: FigurePath): Series {
    const place = this.places.get(`value ${path}`)
    return this.shifts.map(({ values }) => (place === undefined ? 0 : values[place]!))
  }

  /** Upper or lower part of a ratio, a shift: that is a sum over all that is counted. */
  part(path: FigurePath, part: 'value' | 'over'): Series {
    const place = this.places.get(`${part} ${path}`)!
    return this.shifts.map(({ values }) => values[place]! / this.inOne)
  }

  /** `place`: of what, and what of it; `of`: the name of a measure that rests on the same events. */
  figure(place: string, label: string, values: Series, of?: MeasureName): Figure {
    this.told.set(place, values)
    const found = meanEstimate(values, this.asked.confidence, this.controls)
    const measure = of && measureNamed(this.measures, of)
    const few = measure ? tooFew(measure, this.shifts, this.inOne) : null
    return figureOf(few === null ? found : ofFew(found, few), { unit: 'cases', label })
  }

  /** A step; null where no shift has any of it. */
  step(
    where: string,
    key: string,
    label: string,
    values: Series,
    could: number,
    of?: MeasureName,
  ): LossStep | null {
    if (values.every((value) => value === 0)) return null
    const cases = this.figure(`${where} ${key}`, label, values, of)
    return { key, label, cases, share: shareOf(cases, could) }
  }
}

export const times = (series: Series, factor: number): Series => series.map((value) => value * factor)
export const less = (series: Series, ...others: Series[]): Series =>
  series.map((value, shift) => others.reduce((rest, other) => rest - other[shift]!, value))
export const plus = (series: Series, ...others: Series[]): Series =>
  less(series, ...others.map((other) => times(other, -1)))
export const sum = (series: Series): number => series.reduce((total, value) => total + value, 0)
export const shareOf = ({ mean }: Figure, could: number): number => (could > 0 ? (mean ?? 0) / could : 0)
export const lost = (steps: readonly LossStep[]): number => sum(steps.map(({ cases }) => cases.mean ?? 0))
