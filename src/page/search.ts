/** Runs in the page of the manual: finds what is typed in its paragraphs, items and rows. */

/** What can be found, as it stands in the page. */
interface Place {
  element: HTMLElement
  title: string
  text: string
  lower: string
}

const mostHits = 40
const contextLength = 140

const sought = document.querySelector<HTMLInputElement>('#sought')!
const hits = document.querySelector<HTMLElement>('#hits')!
const count = document.querySelector<HTMLElement>('#count')!

const places: Place[] = [...document.querySelectorAll('section')].flatMap((section) => {
  const title = section.querySelector('h2')?.textContent ?? ''
  return [...section.querySelectorAll<HTMLElement>('h2, h3, p, li, tr, pre')].map((element, at) => {
    if (element.id === '') element.id = `${section.id}-${at + 1}`
    const text = element.textContent ?? ''
    return { element, title, text, lower: text.toLowerCase() }
  })
})

/** The better a place suits, the less: names first, then headings, then what holds all words. */
function rank({ element, lower }: Place, words: readonly string[]): number {
  const [name] = element.querySelector('code')?.textContent?.toLowerCase().split(' ') ?? []
  if (element.tagName === 'LI' && name !== undefined) {
    if (words.length === 1 && (name === words[0] || name.endsWith(`.${words[0]}`))) return 0
    if (words.every((word) => name.includes(word))) return 1
  }
  if (/^H/.test(element.tagName)) return 1
  return lower.startsWith(words[0]!) ? 2 : 3
}

function search(): void {
  const words = sought.value.toLowerCase().split(/\s+/).filter(Boolean)
  hits.replaceChildren()
  count.textContent = ''
  if (words.length === 0) return
  const found = places
    .filter(({ lower }) => words.every((word) => lower.includes(word)))
    .map((place) => ({ place, rank: rank(place, words) }))
    .sort((one, other) => one.rank - other.rank)
  count.textContent =
    found.length === 0
      ? 'Nothing found'
      : `${found.length} found${found.length > mostHits ? `, the first ${mostHits}` : ''}`
  hits.append(...found.slice(0, mostHits).map(({ place }) => hit(place, words[0]!)))
}

function hit({ element, title, text, lower }: Place, word: string): HTMLElement {
  const item = document.createElement('li')
  const link = document.createElement('a')
  link.href = `#${element.id}`
  link.textContent = title
  link.addEventListener('click', () => mark(element))
  const from = Math.max(0, lower.indexOf(word) - contextLength / 3)
  const context = document.createElement('span')
  context.textContent = `${from > 0 ? '… ' : ''}${text.slice(from, from + contextLength)}${text.length > from + contextLength ? ' …' : ''}`
  item.append(link, context)
  return item
}

/** Shows which place was found. */
function mark(element: HTMLElement): void {
  document.querySelector('.found')?.classList.remove('found')
  element.classList.add('found')
}

document.querySelector<HTMLElement>('#search')!.hidden = false
sought.addEventListener('input', search)
sought.addEventListener('keydown', (event) => {
  if (event.key === 'Enter') hits.querySelector('a')?.click()
  if (event.key === 'Escape') {
    sought.value = ''
    search()
  }
})

// a module: its names are its own
export {}
