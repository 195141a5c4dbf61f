/** Undo and redo over all edits of a text; quick edits of one field count as one. Data alone, so that it can be stored. */
import * as z from 'zod'

/** A text, and what brought it about: the path of the field, or what else was done. */
interface State {
  text: string
  by: string
  /** When, ms by any clock that does not run backwards. */
  at: number
}

/** The states that may be gone back to, the text as it is, and those that were taken back, the nearest last. */
export interface History {
  past: readonly State[]
  present: State
  future: readonly State[]
}

/** Edits of one field that follow each other faster are one, ms. */
const quick = 1000
/** Letters of all texts that are kept: half of what browsers commonly store for a page. */
const mostLetters = 2_000_000
const mostStates = 300

export const begun = (text: string): History => ({
  past: [],
  present: { text, by: '', at: Number.NEGATIVE_INFINITY },
  future: [],
})

/** The history after an edit at `at`, ms; the same where it changes nothing. */
export function edited(history: History, text: string, by: string, at: number): History {
  const { past, present } = history
  if (text === present.text) return history
  const isSame = by !== '' && by === present.by && at - present.at < quick && history.future.length === 0
  const kept = isSame ? past : within([...past, present], text.length)
  return { past: kept, present: { text, by, at }, future: [] }
}

/** The history one edit earlier; the same where there is none. */
export function undone(history: History): History {
  const last = history.past.at(-1)
  if (!last) return history
  return { past: history.past.slice(0, -1), present: last, future: [...history.future, history.present] }
}

/** The history with what was taken back last; the same where there is nothing. */
export function redone(history: History): History {
  const next = history.future.at(-1)
  if (!next) return history
  return { past: [...history.past, history.present], present: next, future: history.future.slice(0, -1) }
}

/** The latest states that fit beside a text of so many letters. */
function within(states: readonly State[], letters: number): readonly State[] {
  let sum = letters
  let from = states.length
  while (from > 0 && states.length - from < mostStates) {
    sum += states[from - 1]!.text.length
    if (sum > mostLetters) break
    from--
  }
  return from === 0 ? states : states.slice(from)
}

/** As it is stored: of another visit no time is known. */
export const stored = (history: History): string =>
  JSON.stringify(history, ['past', 'present', 'future', 'text', 'by'])

const state = z
  .object({ text: z.string(), by: z.string() })
  .transform((each): State => ({ ...each, at: Number.NEGATIVE_INFINITY }))
const whole = z.object({ past: z.array(state), present: state, future: z.array(state) })

/** What was stored; null where that is none of ours. */
export function restored(text: string): History | null {
  try {
    return whole.parse(JSON.parse(text))
  } catch {
    return null
  }
}
