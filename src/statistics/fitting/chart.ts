/** Coordinates of the families: a centre and a width of ln x, in which likelihoods are nearly round, and those that keep a figure fixed. */
import gammaln from '@stdlib/math-base-special-gammaln'
import { distributionOf, type Family, type SimpleLaw } from './law.js'

/** About the middle of ln x, and the logarithm of about its standard deviation; an exponential law has the width of shape 1. */
export interface Place {
  centre: number
  logWidth: number
}

/** Widths of ln x beyond which a law is the edge of its family and no law of times. Project rule. */
const widths = [Math.log(1e-6), Math.log(20)] as const

/** Whether `place` lies within the family. */
export const isWithin = ({ centre, logWidth }: Place): boolean =>
  Number.isFinite(centre) && logWidth > widths[0] && logWidth < widths[1]

/** The law of `family` at a place. Of a gamma law the centre is ln of its mean, which its shape hardly moves. */
export function lawAt(family: Family, { centre, logWidth }: Place): SimpleLaw {
  switch (family) {
    case 'exponential':
      return { family, mean: Math.exp(centre) }
    case 'weibull':
      return { family, shape: Math.exp(-logWidth), scale: Math.exp(centre) }
    case 'gamma':
      return { family, shape: Math.exp(-2 * logWidth), scale: Math.exp(centre + 2 * logWidth) }
    case 'lognormal':
      return { family, location: centre, spread: Math.exp(logWidth) }
  }
}

/** The place of a law of one part. */
export function placeOf(law: SimpleLaw): Place {
  switch (law.family) {
    case 'exponential':
      return { centre: Math.log(law.mean), logWidth: 0 }
    case 'weibull':
      return { centre: Math.log(law.scale), logWidth: -Math.log(law.shape) }
    case 'gamma':
      return { centre: Math.log(law.shape * law.scale), logWidth: -Math.log(law.shape) / 2 }
    case 'lognormal':
      return { centre: law.location, logWidth: Math.log(law.spread) }
  }
}

/** A figure of a law, and the laws that share a value of it. */
export interface Figure {
  name: string
  /** Whether it is above 0, so that its logarithm is the better scale. */
  isPositive: boolean
  of(law: SimpleLaw): number
  /** What the value leaves free; null: nothing. */
  free: keyof Place | null
  /** The law with this `value` of it, and `other` of what it leaves free. */
  lawWith(value: number, other: number): SimpleLaw
}

/** Parameters of a family, in the order in which a law has them. */
export function parametersOf(family: Family): readonly Figure[] {
  const figure = (
    name: string,
    free: keyof Place,
    placeWith: (value: number, other: number) => Place,
  ): Figure => ({
    name,
    isPositive: name !== 'location',
    of: (law) => (law as unknown as Record<string, number>)[name]!,
    lawWith: (value, other) => lawAt(family, placeWith(value, other)),
    free,
  })
  switch (family) {
    case 'exponential':
      return [meanOf(family)]
    case 'weibull':
      return [
        figure('shape', 'centre', (shape, centre) => ({ centre, logWidth: -Math.log(shape) })),
        figure('scale', 'logWidth', (scale, logWidth) => ({ centre: Math.log(scale), logWidth })),
      ]
    case 'gamma':
      return [
        figure('shape', 'centre', (shape, centre) => ({ centre, logWidth: -Math.log(shape) / 2 })),
        figure('scale', 'logWidth', (scale, logWidth) => ({
          centre: Math.log(scale) - 2 * logWidth,
          logWidth,
        })),
      ]
    case 'lognormal':
      return [
        figure('location', 'logWidth', (centre, logWidth) => ({ centre, logWidth })),
        figure('spread', 'centre', (spread, centre) => ({ centre, logWidth: Math.log(spread) })),
      ]
  }
}

/** The mean of a law of `family`. */
export function meanOf(family: Family): Figure {
  const centreOf = (mean: number, logWidth: number): number => {
    const width = Math.exp(logWidth)
    if (family === 'lognormal') return Math.log(mean) - (width * width) / 2
    return family === 'weibull' ? Math.log(mean) - gammaln(1 + width) : Math.log(mean)
  }
  return {
    name: 'mean',
    isPositive: true,
    of: (law) => distributionOf(law).mean,
    lawWith: (mean, logWidth) => lawAt(family, { centre: centreOf(mean, logWidth), logWidth }),
    free: family === 'exponential' ? null : 'logWidth',
  }
}
