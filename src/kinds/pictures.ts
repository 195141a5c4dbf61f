/** How each kind of equipment looks from above, and how cases move on it: one row a kind. */
import { conveyorInPictures } from './conveyor/picture.js'
import { divertInPictures } from './divert/picture.js'
import type { InPictures } from './in-pictures.js'
import { inspectInPictures } from './inspect/picture.js'
import type { KeysOf, Kind } from './keys.js'
import { sealerInPictures } from './sealer/picture.js'
import { stationInPictures } from './station/picture.js'

const kindsInPictures: { [K in Kind]: InPictures<KeysOf<K>> } = {
  conveyor: conveyorInPictures,
  sealer: sealerInPictures,
  station: stationInPictures,
  divert: divertInPictures,
  inspect: inspectInPictures,
}

/** The kind of a piece in pictures. */
export const inPicturesOf = ({ type }: { type: Kind }): InPictures<KeysOf> =>
  kindsInPictures[type] as InPictures<KeysOf>
