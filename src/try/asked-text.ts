/** The text of a scenario as it was asked for: with the values of its variant and of the options written into it. */
import { type Override, ofPieces, readSet, variantsOf } from '../scenario/overrides.js'
import { addPiece, removePieces } from '../scenario/pieces.js'
import type { ScenarioAsked } from '../scenario/read.js'
import { type Edited, isRefused, type Refused } from './draft/edited.js'
import { rewritten } from './draft/rewritten.js'
import { putAt } from './draft/values.js'
import type { Tree } from './draft/yaml-text.js'

/** The text of what was asked for; null where that cannot be written into it. */
export function askedText(
  text: string,
  { variant, set = [], shifts, seed, confidence, engine }: ScenarioAsked,
): string | null {
  const ofStudy = Object.entries({ shifts, seed, confidence, engine }).flatMap(([key, value]): Override[] =>
    value === undefined ? [] : [{ path: `study.${key}`, value, source: '', at: null }],
  )
  // to read a long text takes seconds
  if (variant === undefined && set.length + ofStudy.length === 0) return text
  const made: Edited = rewritten(text, (tree) => {
    const chosen = variantsOf(tree).find(({ name }) => name === variant)
    const sets = set.flatMap((each) => ofPieces(readSet(each)))
    return changed(tree, [...(chosen?.overrides ?? []), ...sets, ...ofStudy])
  })
  return isRefused(made) ? null : made.text
}

/** Makes the changes in the tree, in place, in the order of the loader: pieces come first and go last. */
export function changed(tree: Tree, overrides: readonly Override[]): Refused | null {
  const done = (what: Override['does']) => overrides.filter(({ does }) => does === what)
  for (const override of done('add')) {
    const found = addPiece(tree, override)
    if (found) return found.finding
  }
  for (const { path, value } of done(undefined)) {
    const found = putAt(tree, path, value)
    if (found) return found
  }
  return removePieces(tree, done('remove'))[0]?.finding ?? null
}
