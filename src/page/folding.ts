/** Folds of the page: a link to what is inside opens it, one button opens all, and paper gets what it needs. */

const foldsIn = (root: ParentNode) => [...root.querySelectorAll<HTMLDetailsElement>('details.fold')]

/** Opens what the address names, and what that stands in. */
function openNamed(): void {
  const name = decodeURIComponent(location.hash.slice(1))
  const target = name === '' ? null : document.getElementById(name)
  if (!target) return
  let fold = target.closest('details')
  if (!fold) return
  for (; fold; fold = fold.parentElement?.closest('details') ?? null) fold.open = true
  target.scrollIntoView()
}

/** Starts it; `drawn` draws what was folded before paper shows it. */
export function startFolding(): void {
  const button = document.getElementById('open-all')
  const folds = foldsIn(document)
  const isAll = () => folds.every(({ open }) => open)
  const tell = () => {
    if (!button) return
    button.textContent = isAll() ? 'Close all' : 'Open all'
    button.setAttribute('aria-expanded', String(isAll()))
  }
  if (button) {
    button.hidden = false
    button.addEventListener('click', () => {
      const open = !isAll()
      for (const fold of folds) fold.open = open
    })
  }
  for (const fold of folds) fold.addEventListener('toggle', tell)
  addEventListener('hashchange', openNamed)
  openNamed()
  openOnPaper(folds)
}

/** Paper shows folds open, also where the style alone cannot open them. */
function openOnPaper(folds: readonly HTMLDetailsElement[]): void {
  let closed: HTMLDetailsElement[] = []
  addEventListener('beforeprint', () => {
    closed = folds.filter(({ open }) => !open)
    for (const fold of closed) fold.open = true
  })
  addEventListener('afterprint', () => {
    for (const fold of closed) fold.open = false
    closed = []
  })
}
