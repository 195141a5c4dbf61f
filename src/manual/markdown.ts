/** The Markdown of the manual as a small closed tree. HTML in it is text and never passes through. */
import { marked, type Token, type Tokens } from 'marked'

/** A piece of a sentence. */
export type Inline =
  | { kind: 'text'; text: string }
  | { kind: 'code'; text: string }
  | { kind: 'strong' | 'em'; inlines: readonly Inline[] }
  | { kind: 'link'; to: string; inlines: readonly Inline[] }

/** What stands in lines of its own. */
export type Block =
  | { kind: 'heading'; depth: number; inlines: readonly Inline[] }
  | { kind: 'paragraph'; inlines: readonly Inline[] }
  | { kind: 'code'; language: string; text: string }
  | { kind: 'list'; isOrdered: boolean; items: readonly (readonly Block[])[] }
  | { kind: 'table'; head: readonly (readonly Inline[])[]; rows: readonly (readonly (readonly Inline[])[])[] }
  | { kind: 'quote'; blocks: readonly Block[] }

/** The blocks of a text. */
export const blocksOf = (text: string): Block[] => marked.lexer(text, { gfm: true }).flatMap(blockOf)

function blockOf(token: Token): Block[] {
  switch (token.type) {
    case 'space':
      return []
    case 'heading':
      return [{ kind: 'heading', depth: (token as Tokens.Heading).depth, inlines: inlinesOf(token) }]
    case 'code': {
      const { lang = '', text } = token as Tokens.Code
      return [{ kind: 'code', language: lang, text }]
    }
    case 'list': {
      const { ordered, items } = token as Tokens.List
      return [{ kind: 'list', isOrdered: ordered, items: items.map(({ tokens }) => tokens.flatMap(blockOf)) }]
    }
    case 'table': {
      const { header, rows } = token as Tokens.Table
      return [{ kind: 'table', head: header.map(inlinesOf), rows: rows.map((row) => row.map(inlinesOf)) }]
    }
    case 'blockquote':
      return [{ kind: 'quote', blocks: (token as Tokens.Blockquote).tokens.flatMap(blockOf) }]
    case 'paragraph':
    case 'text':
      return [{ kind: 'paragraph', inlines: inlinesOf(token) }]
    default:
      // HTML among others: shown as it was written
      return [{ kind: 'paragraph', inlines: [{ kind: 'text', text: token.raw.trim() }] }]
  }
}

const inlinesOf = (token: { tokens?: Token[]; text?: string }): Inline[] =>
  token.tokens ? token.tokens.flatMap(inlineOf) : [{ kind: 'text', text: unbroken(token.text ?? '') }]

function inlineOf(token: Token): Inline[] {
  switch (token.type) {
    case 'codespan':
      return [{ kind: 'code', text: unbroken((token as Tokens.Codespan).text) }]
    case 'strong':
    case 'em':
      return [{ kind: token.type, inlines: inlinesOf(token) }]
    case 'link':
      return [{ kind: 'link', to: (token as Tokens.Link).href, inlines: inlinesOf(token) }]
    case 'text':
      return inlinesOf(token as Tokens.Text)
    case 'escape':
      return [{ kind: 'text', text: (token as Tokens.Escape).text }]
    default:
      return [{ kind: 'text', text: unbroken(token.raw) }]
  }
}

/** Lines of the source end anywhere. */
const unbroken = (text: string): string => text.replace(/\s*\n\s*/g, ' ')

/** The words of inlines, without their marks. */
export const wordsOf = (inlines: readonly Inline[]): string =>
  inlines.map((each) => ('text' in each ? each.text : wordsOf(each.inlines))).join('')

/** Text as Markdown that reads as that text; what stands between backticks stays code. */
export const plain = (text: string): string =>
  text
    .split(/(`[^`]*`)/)
    .map((part, index) => (index % 2 === 1 ? part : part.replace(/[\\`*_[\]<>#|]/g, '\\$&')))
    .join('')
