/** What a key of a scenario is called in a sentence: `line.sealer.belt-speed` is the belt speed of sealer. */

/** Words of keys whose name alone says too little, by their end below the piece, case, source or crew. */
const words: Readonly<Record<string, string>> = {
  bed: 'bed length',
  time: 'time per case',
  servers: 'number of places',
  'side-by-side': 'number side by side',
  'every.cases': 'number of cases between planned stops',
  'every.stop': 'length of a planned stop',
  'flaps.time': 'time to fold the flaps',
  'size-setting.time': 'time to set a size',
  'jams.chance': 'chance of a jam',
  'jams.clear': 'time to clear a jam',
  'breakdowns.after': 'time between breakdowns',
  'breakdowns.counted-in': 'time base of breakdowns',
  'breakdowns.repair': 'repair time',
  'roll-change.time': 'time of a roll change',
  'roll-change.low-tape-warning': 'length of tape left at the low-tape warning',
  'roll-change.noticed-after': 'number of unsealed cases until somebody notices',
  'tape-breaks.chance': 'chance of a tape break',
  'tape-breaks.fix': 'time to fix a tape break',
  'blade.service-after': 'number of cuts between blade services',
  'blade.time': 'time of a blade service',
  'divert.time': 'time to divert a case',
  chance: 'chance of a reject',
  rate: 'rate of arrivals',
  'time-between': 'time between arrivals',
  people: 'number of people',
  walk: 'walking time',
}

/** Words of keys that stand for themselves. */
const own: Readonly<Record<string, string>> = {
  target: 'target',
  'tape.roll': 'length of a roll',
  'tape.lost-per-roll': 'tape lost per roll',
  'shift.start': 'how a shift starts',
}

/** What is said of the name under which a key stands. */
const under: Readonly<Record<string, (label: string, name: string) => string>> = {
  line: (label, name) => `${label} of ${name}`,
  cases: (label, name) => `${label} of ${name}`,
  arrivals: (label, name) => `${label} at ${name}`,
  crew: (label, name) => `${label} (${name})`,
}

const plain = (key: string): string => key.replaceAll('-', ' ')

/** `belt-speed` is the belt speed, `heads.bottom.rated-speed` the rated speed of its bottom head. */
function below(keys: readonly string[]): string {
  const known = words[keys.join('.')]
  if (known !== undefined) return known
  const [first, kind, last] = keys
  // jams and breakdowns may have kinds with names
  if (keys.length === 3 && words[`${first}.${last}`] !== undefined)
    return `${words[`${first}.${last}`]} (${kind})`
  if (first === 'heads' && keys.length > 2) return `${below(keys.slice(2))} of the ${kind} head`
  return keys.map(plain).reverse().join(' of ')
}

/** The label of the key at a dotted path; any text gets one. */
export function labelOf(path: string): string {
  const [root = '', name, ...keys] = path.split('.')
  const known = own[path]
  if (known !== undefined) return known
  const said = under[root]
  if (said && name !== undefined && keys.length > 0) return said(below(keys), name)
  return [root, name ?? '', ...keys].filter(Boolean).map(plain).join(' ')
}

/** The label, and the path beside it for those who act: `belt speed of sealer (line.sealer.belt-speed)`. */
export const labelAndPath = (path: string): string => {
  const label = labelOf(path)
  return label === path ? path : `${label} (${path})`
}
