/** Sentences of what a command prints by default, and how many words each has when it is read aloud. */

/** Where a row of a screen begins, and its word before that. */
const indent = 10
const head = /^(?:[A-Z][a-z]*(?: [a-z]+)?)? *$/

/** Paragraphs: rows of the screen without their word, verdicts, lines before and after; without tables and titles. */
function paragraphsOf(output: string): string[] {
  const paragraphs: string[] = []
  let isTable = false
  for (const line of output.replaceAll('\u2009', '').split('\n')) {
    const isRow = head.test(line.slice(0, indent)) && line.length > indent && line[indent - 1] === ' '
    const isNext = isRow && line.startsWith(' ')
    const text = isRow ? line.slice(indent).trim() : line.trim()
    // a table has a title, a head and rows with wide gaps; it ends at the next row of the screen
    isTable =
      !isRow &&
      line !== '' &&
      (isTable || / {3,}\S/.test(line) || /^(?:Designs, best|Rate or mean)/.test(line))
    if (isTable || text === '') {
      paragraphs.push('')
      continue
    }
    if ((isNext || !isRow) && !/^\d\. /.test(text) && paragraphs.at(-1))
      paragraphs[paragraphs.length - 1] += ` ${text}`
    else paragraphs.push(text)
  }
  return paragraphs.filter(Boolean).map((each) => each.replace(/^\d\. /, ''))
}

const number = '[-+−]?\\d[\\d.]*'
const unit =
  '(?: ?%| points?| (?:cases?|shifts?|campaigns?|designs?|draws?|days?|rows?|stops?|values?|warnings?|errors?|notes?|inputs?|runs|EUR|USD|mm|m|in|ft|lb|kg|s|min|h)(?:/(?:min|h|s))?(?![\\w/])| an? (?:hour|shift|day))'
/** `9.21 ± 0.05 cases/min`, `98 % (92 to 100 %)`, `350 mm`, `7 h 15 min`, `from 2026-08-03`: one word. */
const figure = new RegExp(
  `(?<![\\w-])\\(?${number}(?!-?[A-Za-z])${unit}?(?: ${number}${unit})*(?: ± ${number})?${unit}?(?: \\(?${number}${unit}? to ${number}${unit}?\\)?)?${unit}?`,
  'g',
)
/** Where something stands in the file, and where more is said: nobody reads it aloud. */
const reference =
  /\s*\((?=[^()]*(?:help: [a-z-]+|\b(?:line|cases|arrivals|crew|tape|shift|site|money|study)\.[\w.-]+|\btarget\b))[^()]*\)/g

/** Words of a sentence: a figure with its unit and its plus-minus is one, and so is what is joined by a hyphen. */
export const wordsIn = (sentence: string): string[] =>
  sentence
    .replace(figure, ' 1 ')
    .split(/[\s,;:()]+/)
    .filter((word) => /[A-Za-z0-9]/.test(word))

/** Sentences of an output: they end with a full stop, a question mark or an exclamation mark. */
export const sentencesOf = (output: string): string[] =>
  paragraphsOf(output).flatMap((paragraph) =>
    paragraph
      .replace(reference, '')
      .split(/(?<=[a-z%)"A-Z0-9][.!?]"?)\s+(?=[A-Z0-9"(a-z])/)
      .filter((each) => /[A-Za-z]/.test(each)),
  )

/** Sentences of more than `most` words. */
export const tooLong = (output: string, most = 25): string[] =>
  sentencesOf(output).filter((sentence) => wordsIn(sentence).length > most)
