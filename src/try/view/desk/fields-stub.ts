/** Provisional. */
import { parseDocument, stringify } from 'yaml'
import type { Field, FieldGroup } from '../../fields/field.js'
import type { Desk } from './desk.js'
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
          part: '',
          dimension: null,
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
