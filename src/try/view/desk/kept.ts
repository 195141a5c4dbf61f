/** Designs that are kept by name: every name once, and none that a comparison needs itself. */
import { baseName } from '../../../questions/compare/document.js'
import type { Pin } from '../../study/messages.js'
import type { Desk } from './desk.js'

/** Letters of a name. */
export const mostOfName = 60
/** Designs that are kept at once: each is simulated when they are compared. */
export const mostKept = 20

/** Names that stand for something else in documents, or in the language. */
const reserved = [baseName, '__proto__', 'constructor', 'toString']

/** The name, or with a number behind it where it is taken; `design 3` where there is none. */
export function freeName(wanted: string, taken: readonly string[]): string {
  const name = wanted.trim().slice(0, mostOfName) || `design ${taken.length + 1}`
  const all = [...reserved, ...taken]
  let free = name
  for (let number = 2; all.includes(free); number++) free = `${name} ${number}`
  return free
}

/** Keeps the line as it is now; says what was done. */
export function keep(desk: Desk, wanted: string): string {
  const pins = desk.pins.value
  if (pins.length >= mostKept) return `At most ${mostKept} designs are kept: drop one first.`
  const same = pins.find(({ text }) => text === desk.text.value)
  if (same) return `This design is kept already, as ${same.name}.`
  const name = freeName(
    wanted,
    pins.map((each) => each.name),
  )
  desk.pins.value = [...pins, { name, text: desk.text.value }]
  return `Kept as ${name}.`
}

/** Gives a design another name; the name that it then has comes back. */
export function renamed(desk: Desk, pin: Pin, wanted: string): string {
  const others = desk.pins.value.filter((each) => each !== pin)
  const name = freeName(
    wanted,
    others.map((each) => each.name),
  )
  desk.pins.value = desk.pins.value.map((each) => (each === pin ? { ...pin, name } : each))
  return name
}

export function dropped(desk: Desk, pin: Pin): void {
  desk.pins.value = desk.pins.value.filter((each) => each !== pin)
}
