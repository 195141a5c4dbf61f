/** Charts by night: whatever is drawn in a colour of the day is drawn in its colour of the night, while the page is dark. */
import { atNight } from '../report/marks/night-inks.js'

/** Is the page dark? Tells of changes as they come. */
export const night = (): MediaQueryList => matchMedia('screen and (prefers-color-scheme: dark)')

/**
 * Lets everything that is drawn into a canvas take its colours by the time of day: charts, the marks drawn by hand into them, legends
 * and letters alike, for all of them name their colours to the canvas alone.
 */
export function followNight(context: CanvasRenderingContext2D, isNight: () => boolean): void {
  const follow = (
    name: 'fillStyle' | 'strokeStyle' | 'globalCompositeOperation',
    nightly: (value: string) => string,
  ) => {
    const own = Object.getOwnPropertyDescriptor(CanvasRenderingContext2D.prototype, name)!
    Object.defineProperty(context, name, {
      configurable: true,
      get: () => own.get!.call(context),
      set: (value: unknown) =>
        own.set!.call(context, typeof value === 'string' && isNight() ? nightly(value) : value),
    })
  }
  follow('fillStyle', atNight)
  follow('strokeStyle', atNight)
  // a shade that darkens paper lightens the night
  follow('globalCompositeOperation', (value) => (value === 'multiply' ? 'screen' : value))
}
