/** Designs kept by name: each a text. Their names are those of variants, so that they can become such. */
import { name as nameOfFormat } from '../scenario/kit.js'
import type { Pin } from './study/messages.js'

/** What the line as it came is called beside them. */
export const cameAs = 'base'

/** A design more, under the name that is wanted as far as it may be had; the same text under the same name is kept once. */
export function pinned(pins: readonly Pin[], wanted: string, text: string): Pin[] {
  if (pins.some((each) => each.name === wanted.trim() && each.text === text)) return [...pins]
  return [...pins, { name: pinName(pins, wanted), text }]
}

/** Without the design of that name. */
export const unpinned = (pins: readonly Pin[], name: string): Pin[] =>
  pins.filter((each) => each.name !== name)

/** The name nearest to the wanted one that a variant may have and no other pin has. */
export function pinName(pins: readonly Pin[], wanted: string): string {
  const taken = [cameAs, ...pins.map(({ name }) => name)]
  const letters = wanted
    .trim()
    .replace(/[^\p{L}\p{N} _-]/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[^\p{L}]+/u, '')
  const plain = letters.slice(0, 36).trim()
  const base = nameOfFormat.safeParse(plain).success ? plain : 'design'
  if (base !== 'design' && !taken.includes(base)) return base
  let number = base === 'design' ? 1 : 2
  while (taken.includes(`${base} ${number}`)) number++
  return `${base} ${number}`
}
