/** A station in pictures: its places side by side, and those to wait before them, as far as they are drawn. */
import { type InPictures, standing } from '../in-pictures.js'
import type { StationKeys } from './keys.js'

/** Places that are drawn at most, and of a waiting room without limit. */
const mostDrawn = { work: 8, wait: 8, unlimited: 3 }

export const stationInPictures: InPictures<StationKeys> = {
  shape(keys, { length, width }) {
    const room = keys['waiting-room'] === 'unlimited' ? mostDrawn.unlimited : keys['waiting-room']
    const places = { work: Math.min(mostDrawn.work, keys.servers), wait: Math.min(mostDrawn.wait, room) }
    return {
      type: keys.type,
      length: length * (1 + places.wait),
      width: width * places.work,
      speed: null,
      heads: [],
      places,
      ...(keys['run-by'] === 'people' ? { people: keys.servers } : {}),
    }
  },
  movement: ({ servers }) => ({ ...standing, moves: 'station', servers }),
}
