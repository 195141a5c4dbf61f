/** Provisional. */
import { parse, parseDocument, stringify } from 'yaml'
import type { Kind } from '../../../kinds/keys.js'
import type { Field, FieldGroup } from '../../fields/field.js'
import type { Pin } from '../../study/messages.js'
import type { Desk } from './desk.js'
export const kinds: readonly Kind[] = ['conveyor', 'sealer', 'station', 'divert', 'inspect']
export function fieldsOf(desk: Desk): FieldGroup[] {
  const doc = parseDocument(desk.text.value)
  const raw = doc.toJS() as Record<string, unknown>
  const groups: FieldGroup[] = []
  const walk = (path: string[], value: unknown) => {
    const fields: Field[] = []
    for (const [key, each] of Object.entries(value as object)) {
      const p = [...path, key].join('.')
      if (typeof each === 'object' && each !== null && !Array.isArray(each) && path.length < 2)
        walk([...path, key], each)
      else {
        const written = stringify(each, { collectionStyle: 'flow', lineWidth: 0 }).trim()
        const m = /^([\d.]+) (\S.*)$/.exec(written)
        const amount = m ? { number: Number(m[1]), unit: m[2]! } : null
        fields.push({
          path: p,
          label: key.replaceAll('-', ' '),
          explanation: 'what it means',
          takes: 'such as `24 m/min`',
          form: amount ? 'amount' : typeof each === 'object' ? 'more' : 'text',
          isNeeded: false,
          written,
          usual: null,
          basis: null,
          evidence: null,
          amount,
          units: amount ? [{ unit: amount.unit, system: 'both' }] : [],
          choices: [],
          drag: amount ? { from: 0, to: amount.number * 2, step: amount.number / 20 } : null,
        })
      }
    }
    if (fields.length)
      groups.push({ path: path.join('.'), title: path.at(-1) ?? '', explanation: '', fields })
  }
  walk([], raw)
  return groups
}
export function write(desk: Desk, path: string, value: string | null) {
  desk.edit(path, (text) => {
    const doc = parseDocument(text)
    if (value === null) doc.deleteIn(path.split('.'))
    else doc.setIn(path.split('.'), parse(value))
    return { text: String(doc) }
  })
}
export type Act =
  | { what: 'move'; by: number }
  | { what: 'beside' }
  | { what: 'remove' }
  | { what: 'add'; kind: Kind }
export function act(_desk: Desk, _piece: string, _what: Act) {}
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
