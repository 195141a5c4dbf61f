/** Provisional. */
import type { Pin } from '../../study/messages.js'
import type { Desk } from './desk.js'

export const keep = (desk: Desk, name: string) => {
  desk.pins.value = [
    ...desk.pins.value,
    { name: name || `design ${desk.pins.value.length + 1}`, text: desk.text.value },
  ]
  return 'Kept.'
}
export const renamed = (_desk: Desk, pin: Pin, _name: string) => pin.name
export const dropped = (desk: Desk, pin: Pin) => {
  desk.pins.value = desk.pins.value.filter((each) => each !== pin)
}
export const commandsOf = (desk: Desk) => [
  { title: 'As the command', text: `tapeshift run ${desk.line.name}` },
]
