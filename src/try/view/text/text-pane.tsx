/** The scenario as text beside the fields: each follows the other. */
import { useSignalEffect } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Desk } from '../desk/desk.js'
import { type TextEditor, textEditor } from './editor.js'

export function TextPane({ desk }: { desk: Desk }) {
  const place = useRef<HTMLDivElement>(null)
  const editor = useRef<TextEditor | null>(null)
  useEffect(() => {
    const made = textEditor(place.current!, {
      text: desk.text.value,
      changed: (text) => desk.whenTyped('text', () => desk.take(text, 'text')),
      undo: () => desk.undo(),
      redo: () => desk.redo(),
    })
    editor.current = made
    made.mark(marksOf(desk))
    return () => made.end()
  }, [])
  useSignalEffect(() => editor.current?.follow(desk.text.value))
  useSignalEffect(() => editor.current?.mark(marksOf(desk)))
  return (
    <section class="text-pane" aria-label="The scenario as text">
      <h2>{desk.line.name}</h2>
      <p class="note">
        Fields and text follow each other. Ctrl+Space offers keys and words; Tab leaves the text.
      </p>
      <div class="editor" ref={place} />
    </section>
  )
}

const marksOf = (desk: Desk) =>
  desk.known.problems.value.map(({ line, column, rule, fix }) => ({
    ...{ line, column },
    words: fix ? `${rule}. Fix: ${fix}` : rule,
  }))
