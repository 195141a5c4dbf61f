/** What made the picture, small at its foot: a picture that travels alone still says where it comes from. */
import type { Plugin } from 'chart.js'
import { counted } from '../format.js'
import { palette } from './inks.js'
import { written } from './pen.js'

/** What a document says of its making. */
export interface Origin {
  made: { version: string; seed: string; shifts: number } & (
    | { scenario: { sha256: string } }
    | { record: { sha256: string } }
  )
  /** Of what was simulated. */
  shift?: { campaign: number }
}

export const footHeight = 22

export const footId = 'foot'

/** What it was made of, and the begin of its hash. */
const madeOf = (made: Origin['made']): string =>
  'scenario' in made
    ? `scenario ${made.scenario.sha256.slice(0, 12)}`
    : `record ${made.record.sha256.slice(0, 12)}`

export function foot({ made, shift }: Origin): Plugin {
  const seed = made.seed.length > 30 ? `${made.seed.slice(0, 29)}…` : made.seed
  const text = [
    `tapeshift ${made.version}`,
    counted(made.shifts, (shift?.campaign ?? 1) > 1 ? 'campaign' : 'shift'),
    `seed "${seed}"`,
    madeOf(made),
  ].join(' · ')
  const lettering = { size: 10, colour: palette.quietInk, align: 'right' } as const
  return {
    id: footId,
    afterDraw: ({ ctx, width, height }) => written(ctx, text, width - 24, height - 8, lettering),
  }
}
