/** `4000 cases/shift` and `10 stops per shift`: what people know of a whole shift, as a rate and as a time from one to the next. */
import { aShift } from './meant.js'
import { parseQuantity } from './quantity.js'

const number = '(\\d+\\.?\\d*|\\.\\d+)'
const ofCases = `^\\s*${number}\\s*(?:cases?)?\\s*${aShift}\\s*$`
const ofStops = `^\\s*${number}\\s*(?:stops?|breakdowns?|failures?|times?)?\\s*${aShift}\\s*$`

/** Regular expression sources for editors, without their groups. */
export const perShiftPatterns = {
  cases: ofCases.replaceAll('(?:', '('),
  stops: ofStops.replaceAll('(?:', '('),
}

const countIn = (pattern: string, written: unknown): number | null => {
  const match =
    typeof written === 'string' && written.length <= 200 ? new RegExp(pattern, 'i').exec(written) : null
  const count = match ? Number(match[1]) : 0
  return count > 0 && Number.isFinite(count) ? count : null
}

/** Cases a shift; null where a text says none, or something else. */
export const casesPerShift = (written: unknown): number | null => countIn(ofCases, written)

/** Stops a shift; null where a text says none, or something else. */
export const stopsPerShift = (written: unknown): number | null => countIn(ofStops, written)

/** Times of the shift in the tree of a file, s; null where they cannot be read, which is told elsewhere. */
export function shiftTimes(shift: unknown): { length: number; working: number; startUp: number } | null {
  if (typeof shift !== 'object' || shift === null) return null
  const { length, breaks, 'start-up': startUp } = shift as Record<string, unknown>
  const pauses = Array.isArray(breaks) ? breaks.map((each) => (each as { for?: unknown } | null)?.for) : []
  const [whole = Number.NaN, begin = Number.NaN, ...off] = [length, startUp, ...pauses].map((each) => {
    const parsed = parseQuantity(each, 'time')
    return 'value' in parsed ? parsed.value : Number.NaN
  })
  const working = whole - off.reduce((sum, each) => sum + each, 0)
  return working - begin > 0 && begin >= 0 ? { length: whole, working, startUp: begin } : null
}

/** A number of the file with no more digits than it has for sure. */
export const written = (value: number): string => String(Number(value.toPrecision(15)))
