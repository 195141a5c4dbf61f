/** HTML and SVG made of templates: whatever is put into one is text, and made safe, unless it is markup already. */
import { printable } from '../scenario/printable.js'

/** What is markup already. */
export class Markup {
  constructor(private readonly text: string) {}

  get isEmpty(): boolean {
    return this.text === ''
  }

  toString(): string {
    return this.text
  }
}

/** What a template takes: text, numbers, markup, and lists of these, which stand one behind the other. */
export type Content = string | number | Markup | readonly Content[]

const signs: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Text of a scenario: nothing of it may be taken for more than text; signs that control are shown as a dot. */
export const escaped = (text: string): string => printable(text).replace(/[&<>"']/g, (sign) => signs[sign]!)

function textOf(content: Content): string {
  if (content instanceof Markup) return content.toString()
  if (typeof content === 'number') return String(content)
  return typeof content === 'string' ? escaped(content) : content.map(textOf).join('')
}

/** Markup from a template: in content and attributes, text is escaped. */
export const html = (strings: TemplateStringsArray, ...contents: readonly Content[]): Markup =>
  new Markup(strings.reduce((all, each, index) => all + textOf(contents[index - 1]!) + each))

/** SVG, by the same rules. */
export const svg = html

/** Contents in lines of their own. */
export const inLines = (contents: readonly Content[]): Markup => new Markup(contents.map(textOf).join('\n'))

/** Text that is markup already, such as a style. */
export const markup = (text: string): Markup => new Markup(text)

/** Nothing. */
export const empty = new Markup('')
