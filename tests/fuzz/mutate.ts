/** Spoils what the program reads, and knows its structure: trees of keys and lists, tables of cells, and text. Drawn by numbers, so that a find shrinks. */
import fc from 'fast-check'

/** What the quick tests try in all; of more each sort has its share. */
const usualInAll = 1960

/** Of so many in one go: between two goes this thread answers to whoever waits for it. */
const inOneGo = 1000

/** Tries `property` as often as usual; `FUZZ_RUNS` in the environment asks for so many in all, `FUZZ_SEED` for others. Fails at the first find, made small. */
export async function attack<Ts>(
  property: fc.IAsyncProperty<Ts> | fc.IProperty<Ts>,
  usual: number,
): Promise<void> {
  const { FUZZ_RUNS = usualInAll, FUZZ_SEED = 1 } = process.env
  const asked = Math.ceil((usual * Number(FUZZ_RUNS)) / usualInAll)
  for (let done = 0; done < asked; done += inOneGo) {
    // the step is a prime: the goes of one seed are none of another near it
    const seed = Number(FUZZ_SEED) + 1009 * done
    await fc.assert(property, { numRuns: Math.min(inOneGo, asked - done), seed })
    await breathe()
  }
}

/** Between two runs: what a parser of rows has put off until later is done, or it would heap up. */
export const breathe = (): Promise<void> => new Promise((done) => setImmediate(done))

/** One change: where, what is done, and with what; each is taken modulo what there is. */
export interface Change {
  at: number
  does: number
  what: number
}

export const changes = fc.array(
  fc.record({ at: fc.nat(1e6), does: fc.nat(1e6), what: fc.nat(1e6) }) as fc.Arbitrary<Change>,
  { minLength: 1, maxLength: 3 },
)

const units = [
  'm',
  'm/min',
  'ft/min',
  's',
  'yr',
  'kg',
  '%',
  'cases/min',
  'EUR',
  'EUR/h',
  'cuts',
  'N/cm',
  'degC',
  'W',
]
const numbers = ['0', '-1', '1e-308', '1e308', '1e999', '1e-6', '1e6', '0x10', '1,5', 'nan', '٣']

/** What nobody expects to stand anywhere. */
const hostile: readonly unknown[] = [
  ...[
    null,
    true,
    '',
    ' ',
    0,
    -0,
    -1,
    0.5,
    3,
    1e-300,
    1e300,
    Number.POSITIVE_INFINITY,
    2 ** 53,
    [],
    {},
    [[]],
    [{}],
  ],
  ...[
    '__proto__',
    'constructor',
    'toString',
    'base',
    'exit',
    '\u001b[31m',
    '\u202e',
    '</script><b>',
    '🙂',
    '\ud800',
  ],
  ...['x'.repeat(5000), Array(200).fill(0), { guess: 1, between: [2, 3] }, { exponential: { mean: '1 s' } }],
  ...numbers.flatMap((number) => units.map((unit) => `${number} ${unit}`)),
]

type Holder = Record<string | number, unknown>

/** Every place in a tree: what holds it, and under which key. */
function placesIn(node: unknown, found: [Holder, string | number][] = []): [Holder, string | number][] {
  if (typeof node !== 'object' || node === null) return found
  const keys = Array.isArray(node) ? node.keys() : Object.keys(node)
  for (const key of keys) {
    found.push([node as Holder, key])
    placesIn((node as Holder)[key], found)
  }
  return found
}

/** Sets a key as a file would bring it: `__proto__` is a key like all others there. */
const set = (holder: Holder, key: string | number, value: unknown) =>
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true })

function changeTree(root: unknown, { at, does, what }: Change): void {
  const places = placesIn(root)
  if (places.length === 0) return
  const [holder, key] = places[at % places.length]!
  const [other, otherKey] = places[what % places.length]!
  const value = holder[key]
  const ways: (() => void)[] = [
    () => set(holder, key, hostile[what % hostile.length]),
    () => set(holder, key, hostile[what % hostile.length]),
    () => (Array.isArray(holder) ? holder.splice(Number(key), 1) : delete holder[key]),
    () => set(holder, key, structuredClone(other[otherKey])),
    () => {
      set(holder, key, other[otherKey])
      set(other, otherKey, value)
    },
    () => {
      if (Array.isArray(value)) value.reverse()
      else if (typeof value === 'number')
        set(holder, key, value * [-1, 1e-9, 1e9, 1e-300, 1e300, 0.5][what % 6]!)
      else if (typeof value === 'string')
        set(holder, key, value.replace(/\d+(\.\d+)?/, numbers[what % numbers.length]!))
    },
    () => (Array.isArray(value) ? value.push(...structuredClone(value)) : set(holder, `${key}x`, value)),
  ]
  ways[does % ways.length]!()
}

/** A tree like JSON has them, spoilt; itself it stays. */
export function spoiltTree<Tree>(tree: Tree, all: readonly Change[]): Tree {
  // what stands in circles after an exchange is none that a file could bring
  const copy: unknown = JSON.parse(JSON.stringify(tree))
  for (const change of all) changeTree(copy, change)
  return copy as Tree
}

const signs = [
  '"',
  "'",
  ',',
  ';',
  '\t',
  '\n',
  '\r',
  '\u0000',
  '\ufeff',
  ':',
  '{',
  '[',
  '&a',
  '*a',
  '- ',
  '#',
  '|',
  'é',
  '🙂',
]

/** A text with letters put in, taken out, cut off or doubled. */
export function spoiltText(text: string, all: readonly Change[]): string {
  return all.reduce((made, { at, does, what }) => {
    const place = at % (made.length + 1)
    const length = what % 40
    const ways = [
      () => made.slice(0, place) + signs[what % signs.length]! + made.slice(place),
      () => made.slice(0, place) + made.slice(place + length),
      () => made.slice(0, place),
      () => made.slice(0, place) + made.slice(place, place + length).repeat(2) + made.slice(place + length),
      () => made.slice(0, place) + numbers[what % numbers.length]! + made.slice(place),
    ]
    return ways[does % ways.length]!()
  }, text)
}

const cells = [
  '',
  ' ',
  '-5',
  '1e308',
  '1e999',
  '0x10',
  'nan',
  '12,5',
  '"',
  '__proto__',
  '99.99.9999 99:99',
  '31.02.2026 25:00',
]

/** A CSV text with cells, rows and columns changed. */
export function spoiltTable(text: string, delimiter: string, all: readonly Change[]): string {
  const rows = text
    .trimEnd()
    .split('\n')
    .map((row) => row.split(delimiter))
  for (const { at, does, what } of all) {
    const row = rows[at % rows.length]!
    const column = what % Math.max(1, row.length)
    const ways: (() => void)[] = [
      () => (row[column] = cells[what % cells.length]!),
      () => row.splice(column, 1),
      () => row.push(row[column] ?? ''),
      () => rows.push([...row]),
      () => rows.reverse(),
      () => (rows[0]![column] = rows[0]![(column + 1) % rows[0]!.length]!),
      () => rows.splice(0, rows.length, ...rows.slice(0, 1 + (what % 3))),
    ]
    ways[does % ways.length]!()
  }
  return `${rows.map((row) => row.join(delimiter)).join('\n')}\n`
}
