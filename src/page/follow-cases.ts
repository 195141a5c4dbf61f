/// <reference lib="dom" />
/** Follows a case in a time-space diagram: pointing at its line, a tap or the arrow keys make it stand out and say what it is. */

/** How wide around a line a pointer still meets it, px. */
const reach = 12
/** Strokes of the case that is followed and of the others. */
const looks = { followed: 2.6, others: '0.35' }

/** Makes every diagram of the page answer. */
export function followCases(page: Document): void {
  for (const group of page.querySelectorAll<SVGGElement>('svg g[data-cases]')) new Followed(group)
}

class Followed {
  private readonly lines: SVGPathElement[]
  private readonly words = document.createElement('p')
  private at = -1

  constructor(private readonly group: SVGGElement) {
    this.lines = [...group.querySelectorAll<SVGPathElement>('path[data-says]')]
    const drawing = group.ownerSVGElement!
    for (const [index, line] of this.lines.entries()) this.widen(line, index)
    this.words.className = 'note'
    this.words.setAttribute('aria-live', 'polite')
    this.words.textContent = 'Point at a line, or use the arrow keys, to follow its case.'
    drawing.after(this.words)
    drawing.setAttribute('tabindex', '0')
    drawing.addEventListener('pointerleave', () => this.follow(-1))
    drawing.addEventListener('keydown', (event) => this.key(event))
  }

  /** A line that is not seen and easily met lies over the one of the case. */
  private widen(line: SVGPathElement, index: number): void {
    const wide = line.cloneNode() as SVGPathElement
    wide.removeAttribute('data-says')
    wide.setAttribute('stroke', 'transparent')
    wide.setAttribute('stroke-width', String(reach))
    wide.style.pointerEvents = 'stroke'
    const follow = () => this.follow(index)
    wide.addEventListener('pointerenter', follow)
    wide.addEventListener('pointerdown', follow)
    this.group.append(wide)
  }

  private key(event: KeyboardEvent): void {
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key]
    if (by === undefined && event.key !== 'Escape') return
    const count = this.lines.length
    this.follow(by === undefined || count === 0 ? -1 : (this.at + by + count) % count)
    event.preventDefault()
  }

  private follow(index: number): void {
    this.at = index
    for (const [place, { style }] of this.lines.entries()) {
      const isIt = place === index
      style.stroke = isIt ? 'var(--accent)' : ''
      style.strokeWidth = isIt ? String(looks.followed) : ''
      style.opacity = index < 0 || isIt ? '' : looks.others
    }
    // the words stay when the pointer goes, to be read
    if (index >= 0) this.words.textContent = this.lines[index]!.dataset.says!
  }
}
