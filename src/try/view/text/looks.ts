/** How the text of a scenario looks in the editor: colours of the page, by day and by night. */
import { HighlightStyle } from '@codemirror/language'
import { EditorView } from '@codemirror/view'
import { tags } from '@lezer/highlight'

export const highlight = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--accent)' },
  { tag: [tags.comment, tags.lineComment], color: 'var(--quiet)', fontStyle: 'italic' },
  { tag: [tags.punctuation, tags.separator, tags.brace, tags.squareBracket], color: 'var(--quiet)' },
])

export const looks = EditorView.theme({
  '&': { color: 'var(--ink)', backgroundColor: 'var(--paper)', fontSize: '0.85rem', height: '100%' },
  '&.cm-focused': { outline: '3px solid var(--accent)', outlineOffset: '-3px' },
  '.cm-content': { fontFamily: 'ui-monospace, "DejaVu Sans Mono", monospace', caretColor: 'var(--ink)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': {
    backgroundColor: 'var(--card)',
    color: 'var(--quiet)',
    borderRight: '1px solid var(--rule)',
  },
  '.cm-activeLine, .cm-activeLineGutter': { backgroundColor: 'transparent' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': {
    backgroundColor: 'var(--rule)',
  },
  '.cm-tooltip': {
    backgroundColor: 'var(--card)',
    color: 'var(--ink)',
    border: '1px solid var(--rule)',
    maxWidth: '22rem',
  },
  '.cm-tooltip-autocomplete ul li[aria-selected]': {
    backgroundColor: 'var(--accent)',
    color: 'var(--paper)',
  },
  '.cm-tooltip .cm-completionInfo': { width: 'min(20rem, 60vw)' },
  '.cm-completionDetail': { color: 'inherit', fontStyle: 'normal' },
  '.cm-diagnostic': { fontFamily: 'system-ui, sans-serif', padding: '.3rem .6rem' },
  '.cm-diagnostic-error': { borderLeft: '4px solid var(--error)' },
  '.cm-lintRange-error': {
    backgroundImage: 'none',
    textDecoration: 'underline wavy var(--error)',
    textUnderlineOffset: '3px',
  },
})
