/** Takes out of the sources what people may read: texts in quotes and templates of TypeScript, comments of YAML, prose of Markdown. */
import { parseAst } from 'rolldown/parseAst'

/** A text and the line on which it begins. */
export interface Said {
  line: number
  text: string
}

/** What nobody reads: names of other files and of types. */
const unread = /^(Import|ExportAll|TSLiteralType|TSTypeReference)/

interface Node {
  type?: string
  start: number
  value?: unknown
  quasis?: { value: { cooked: string } }[]
}

/** All texts of a TypeScript file, or of one with marks of a page between, that hold two words or more; what is put into a template stands as `$`. */
export function saidInCode(code: string, lang: 'ts' | 'tsx' = 'ts'): Said[] {
  const found: Said[] = []
  const take = (start: number, text: string) => {
    if (/\S \S/.test(text)) found.push({ line: code.slice(0, start).split('\n').length, text })
  }
  const visit = (node: unknown): void => {
    if (node === null || typeof node !== 'object') return
    const { type, start, value, quasis } = node as Node
    if (typeof type === 'string' && unread.test(type)) return
    if ((type === 'Literal' || type === 'JSXText') && typeof value === 'string') take(start, value)
    if (type === 'TemplateLiteral') take(start, quasis!.map((part) => part.value.cooked).join('$'))
    for (const [key, child] of Object.entries(node)) if (key !== 'quasis') visit(child)
  }
  visit(parseAst(code, { lang }).body)
  return found
}

/** Comments of a YAML file. */
export const saidInYaml = (text: string): Said[] =>
  text.split('\n').flatMap((line, index) => {
    const comment = /(?:^|\s)#(.*)$/.exec(line)?.[1]
    return comment === undefined ? [] : [{ line: index + 1, text: comment }]
  })

/** Lines of a Markdown file, without what it quotes. */
export const saidInMarkdown = (text: string): Said[] => {
  let isQuoted = false
  return text.split('\n').flatMap((line, index) => {
    if (line.startsWith('```')) isQuoted = !isQuoted
    return isQuoted || line.startsWith('```')
      ? []
      : [{ line: index + 1, text: line.replaceAll(/`[^`]*`/g, '$') }]
  })
}
