/** `about 4000 cases a shift`, `maybe ten times`, `a minute or two`: what people say when they do not know exactly, in digits. */

const roughly =
  /^(?:about|around|approximately|approx\.?|roughly|nearly|almost|maybe|perhaps|circa|ca\.?|c\.|some|say|~|±)\s*/i
const orSo = /\s*(?:or so|more or less|roughly|approximately|approx\.?)$/i

const counting = 'one two three four five six seven eight nine ten eleven twelve'.split(' ')
const numbers: Readonly<Record<string, number>> = {
  ...{ a: 1, an: 1 },
  ...Object.fromEntries(counting.map((name, index) => [name, index + 1])),
  ...{ fifteen: 15, twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60 },
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
  const between = (low: string, high: string, unit: string) => ({
    text: `${numberOf(low)} to ${numberOf(high)} ${unitOf(unit)}`,
    isGuess: false,
  })
  const [, one, of, two] = oneOrTwo.exec(bare) ?? []
  if (one) return between(one, two!, of!)
  const [, low, high, unit] = twoOrThree.exec(bare) ?? []
  if (low) return between(low, high!, unit!)
  const text = bare.replace(leading, (_, number: string) => `${numberOf(number)} `)
  return /\d/.test(text) && text !== written.trim() ? { text, isGuess } : null
}
