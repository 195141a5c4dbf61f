/** Sentences in the page: what stands between backticks is code, and all else is text. */
import type { ComponentChildren } from 'preact'

/** A sentence. Names come from scenarios, where they may be anything: nothing of it is markup. */
export function Prose({ text }: { text: string }) {
  const parts = text.split('`')
  // an odd backtick opens nothing
  if (parts.length % 2 === 0) return <>{text}</>
  return <>{parts.map((part, index) => (index % 2 === 1 ? <code key={index}>{part}</code> : part))}</>
}

/** The rule that something breaks, and the nearest fix where there is one. */
export function Ruled({ rule, fix }: { rule: string; fix: string }) {
  return (
    <>
      <Prose text={rule} />
      {fix ? (
        <>
          . Fix: <Prose text={fix} />
        </>
      ) : null}
    </>
  )
}

/** Several sentences as a list, one as a paragraph. */
export function Sentences({ lines, isOrdered = false }: { lines: readonly string[]; isOrdered?: boolean }) {
  if (lines.length === 0) return null
  if (lines.length === 1)
    return (
      <p>
        <Prose text={lines[0]!} />
      </p>
    )
  const items = lines.map((line) => (
    <li key={line}>
      <Prose text={line} />
    </li>
  ))
  return isOrdered ? <ol class="plain">{items}</ol> : <ul class="plain">{items}</ul>
}

interface FoldProps {
  title: string
  gist?: string | undefined
  isOpen?: boolean
  told?: (isOpen: boolean) => void
  children: ComponentChildren
}

/** A part that is folded away until somebody wants it; what is inside is made then only where `told` is used for it. */
export function Fold({ title, gist, isOpen = false, told, children }: FoldProps) {
  return (
    <details class="fold" open={isOpen} onToggle={({ currentTarget }) => told?.(currentTarget.open)}>
      <summary>
        <h2>{title}</h2>
        {gist ? <span class="gist">{gist}</span> : null}
      </summary>
      <div class="inside">{children}</div>
    </details>
  )
}
