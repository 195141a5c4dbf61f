/** The text of a PDF that a browser has printed: its content streams, read through the maps of its fonts. */
import { inflateSync } from 'node:zlib'

/** Objects by number, with their streams inflated. After ISO 32000-1, 7.3.8 (streams), 9.10.3 (maps to Unicode). */
function objectsOf(pdf: Buffer): Map<number, { head: string; body: string }> {
  const text = pdf.toString('latin1')
  const objects = new Map<number, { head: string; body: string }>()
  for (const match of text.matchAll(/(\d+) 0 obj\b/g)) {
    const begin = match.index + match[0].length
    const end = text.indexOf('endobj', begin)
    const head = text.slice(begin, end)
    const stream = /stream\r?\n/.exec(head)
    const length = /\/Length (\d+)/.exec(head)
    let body = ''
    if (stream && length) {
      const from = begin + stream.index + stream[0].length
      const bytes = pdf.subarray(from, from + Number(length[1]))
      body = (head.includes('/FlateDecode') ? inflateSync(bytes) : bytes).toString('latin1')
    }
    objects.set(Number(match[1]), { head: stream ? head.slice(0, stream.index) : head, body })
  }
  return objects
}

/** Letters by code of a font. */
function lettersOf(map: string): Map<number, string> {
  const letters = new Map<number, string>()
  const decoded = (hex: string) =>
    String.fromCharCode(...(hex.match(/.{4}/g) ?? []).map((each) => Number.parseInt(each, 16)))
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, to] of block!.matchAll(/<(\w+)>\s*<(\w+)>/g))
      letters.set(Number.parseInt(code!, 16), decoded(to!))
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, upTo, to] of block!.matchAll(/<(\w+)>\s*<(\w+)>\s*<(\w+)>/g)) {
      const [first, last, letter] = [from, upTo, to].map((hex) => Number.parseInt(hex!, 16)) as [
        number,
        number,
        number,
      ]
      for (let code = first; code <= last; code++)
        letters.set(code, String.fromCharCode(letter + code - first))
    }
  return letters
}

/** All text, page by page in the order of the file, blanks left out: a printer may place words one by one. */
export function pdfText(pdf: Buffer): { pages: number; text: string } {
  const objects = objectsOf(pdf)
  const fonts = new Map<string, Map<number, string>>()
  for (const { head } of objects.values())
    for (const [, name, number] of head.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(number))?.head ?? '')
      if (map) fonts.set(name!, lettersOf(objects.get(Number(map[1]))!.body))
    }
  let text = ''
  for (const { body } of objects.values()) {
    if (!body.includes(' Tf')) continue
    let letters = new Map<number, string>()
    for (const [part, font] of body.matchAll(/\/(F\d+) [\d.-]+ Tf|<[0-9A-Fa-f]+>/g)) {
      if (font) letters = fonts.get(font) ?? new Map()
      else
        for (const code of part.slice(1, -1).match(/.{4}/g) ?? [])
          text += letters.get(Number.parseInt(code, 16)) ?? ''
    }
  }
  const pages = [...objects.values()].filter(({ head }) => /\/Type\s*\/Page\b/.test(head)).length
  return { pages, text: text.replace(/\s+/g, '') }
}
