/** A sealer in pictures: as long as its belts and, before them, the longest case in its fold place. */
import { type InPictures, standing } from '../in-pictures.js'
import { headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

export const sealerInPictures: InPictures<SealerKeys> = {
  shape: (keys, { longest, width }) => ({
    type: keys.type,
    length: longest + keys.bed,
    width,
    speed: keys['belt-speed'],
    heads: headsOf(keys)
      .map(([name, { position }]) => ({ name, at: longest + position }))
      .sort((a, b) => a.at - b.at),
    ...(keys.flaps['folded-by'] === 'people' ? { people: 1 } : {}),
  }),
  movement: (keys) => ({ ...standing, moves: 'sealer', length: keys.bed, speed: keys['belt-speed'] }),
}
