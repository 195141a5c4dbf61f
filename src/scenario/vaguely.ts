/** `about 4000 cases a shift`, `maybe ten times`, `a minute or two`: what people say when they do not know exactly, in digits. */

const roughly =
  /^(?:about|around|approximately|approx\.?|roughly|nearly|almost|maybe|perhaps|circa|ca\.?|c\.|some|say|~|±)\s*/i
const orSo = /\s*(?:or so|more or less|roughly|approximately|approx\.?)$/i

const numbers: Readonly<Record<string, number>> = {
  ...{
    a: 1,
    an: 1,
    one: 1,
    two: 2,
    three: 3,
    four: 4,
    five: 5,
    six: 6,
    seven: 7,
    eight: 8,
    nine: 9,
    ten: 10,
  },
  ...{ eleven: 11, twelve: 12, fifteen: 15, twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60 },
}
const word = Object.keys(numbers).join('|')
const leading = new RegExp(`^(${word})\\s+(?!few\\b|couple\\b|shift\\b)(?=\\S)`, 'i')
const oneOrTwo = new RegExp(`^(${word})\\s+(seconds?|minutes?|hours?|days?)\\s+or\\s+(${word})$`, 'i')
const twoOrThree = new RegExp(`^(${word})\\s+(?:or|to)\\s+(${word})\\s+(seconds|minutes|hours|days)$`, 'i')

const units: Readonly<Record<string, string>> = { second: 's', minute: 'min', hour: 'h', day: 'd' }
const numberOf = (text: string): number => numbers[text.toLowerCase()]!
const unitOf = (text: string): string => units[text.toLowerCase().replace(/s$/, '')]!

/** What a text says in digits, and whether it says that this is not exact; null where it has none of these words. */
export function plainly(written: string): { text: string; isGuess: boolean } | null {
  const bare = written.trim().replace(roughly, '').replace(orSo, '')
  const isGuess = bare !== written.trim()
  const both = oneOrTwo.exec(bare)
  if (both)
    return { text: `${numberOf(both[1]!)} to ${numberOf(both[3]!)} ${unitOf(both[2]!)}`, isGuess: false }
  const between = twoOrThree.exec(bare)
  if (between)
    return {
      text: `${numberOf(between[1]!)} to ${numberOf(between[2]!)} ${unitOf(between[3]!)}`,
      isGuess: false,
    }
  const text = bare.replace(leading, (_, number: string) => `${numberOf(number)} `)
  return /\d/.test(text) && text !== written.trim() ? { text, isGuess } : null
}
