/** An inspection in pictures. */
import { type InPictures, standing } from '../in-pictures.js'
import type { InspectKeys } from './keys.js'

export const inspectInPictures: InPictures<InspectKeys> = {
  shape: ({ type, 'run-by': runBy }, { length, width }) => ({
    type,
    length,
    width,
    speed: null,
    heads: [],
    ...(runBy === 'people' ? { people: 1 } : {}),
  }),
  movement: () => ({ ...standing, moves: 'place' }),
}
