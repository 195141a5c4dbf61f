/** A divert in pictures. */
import { type InPictures, standing } from '../in-pictures.js'
import type { DivertKeys } from './keys.js'

export const divertInPictures: InPictures<DivertKeys> = {
  shape: ({ type }, { length, width }) => ({ type, length, width, speed: null, heads: [] }),
  movement: () => ({ ...standing, moves: 'place' }),
}
