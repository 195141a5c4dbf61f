/** What must change in a scenario beside the values of a log: what its times hold already, and the clock that they are counted on. */
import { isolation, jamsOf, type NamedJam } from '../../scenario/jams.js'
import type { Scenario } from '../../scenario/schema.js'
import type { FittedInput } from './document.js'
import { remark, remarksOf } from './remarks.js'

/** Last keys of the times of a stop, by the skill that it takes. */
const skillOf: Readonly<Record<string, string>> = {
  'jams.clear': 'jams',
  'tape-breaks.fix': 'jams',
  'roll-change.time': 'roll-change',
  'size-setting.time': 'size-setting',
  'blade.time': 'blade',
  'breakdowns.repair': 'breakdowns',
}

/** The stop and its last key: a kind of jam by its name is a jam. */
function stopOf(path: string): string {
  const [, , stop, ...more] = path.split('.')
  return `${stop}.${more.at(-1)}`
}

/** The kind of jam whose clearing stands at this path; undefined of all else. */
const jamOf = (path: string, line: Scenario['line']): NamedJam | undefined => {
  const [, piece] = path.split('.') as [string, string]
  return jamsOf(line[piece]?.jams).find(
    ({ at }) => path === ['line', piece, 'jams', ...at, 'clear'].join('.'),
  )
}

/** The same inputs, where breakdowns are counted in the time that the log knows. */
export const inRunningTime = (inputs: readonly FittedInput[], { line }: Scenario): FittedInput[] =>
  inputs.map((input) => {
    const name = input.path.split('.')[1]!
    if (input.what !== 'time-to' || line[name]?.breakdowns?.['counted-in'] !== 'calendar-time') return input
    return { ...input, also: { ...input.also, [`line.${name}.breakdowns.counted-in`]: 'running-time' } }
  })

/**
 * The same inputs, where the walk of each crew that clears such stops goes with the first of them. A crew that `isGiven` does not know is assumed, and
 * stands in no file: it is written whole.
 */
export function withoutWalk(
  inputs: readonly FittedInput[],
  { crew, line }: Scenario,
  isGiven: (name: string) => boolean,
): FittedInput[] {
  const stayThere = (name: string): readonly [path: string, value: string] =>
    isGiven(name)
      ? [`crew.${name}.walk`, '0 s']
      : [`crew.${name}`, `{does: [${crew[name]!.does.join(', ')}], walk: 0 s}`]
  const done = new Set<string>()
  return inputs.map((input) => {
    const skill = skillOf[stopOf(input.path)]
    if (skill === undefined || input.value === null) return input
    const jam = jamOf(input.path, line)
    const isCalled = (name: string, does: readonly string[]) =>
      jam?.keys.by === undefined ? does.includes(skill) : name === jam.keys.by
    const names = Object.entries(crew).flatMap(([name, { does }]) =>
      isCalled(name, does) && !done.has(name) ? [name] : [],
    )
    for (const name of names) done.add(name)
    // what a log holds of a jam is all of it, isolation too
    const isolate: [string, string][] =
      isolation(jam?.keys ?? {}) > 0 ? [[input.path.replace(/clear$/, 'isolate'), '0 s']] : []
    const also = [...isolate, ...names.map(stayThere)]
    if (also.length === 0) return input
    const others = names.flatMap((name) =>
      crew[name]!.does.filter((each) => !Object.values(skillOf).includes(each)),
    )
    return {
      ...input,
      also: { ...input.also, ...Object.fromEntries(also) },
      remarks: remarksOf(
        ...input.remarks,
        others.length > 0 &&
          remark('walk-within', `other work of the same crew loses its walk too: ${others.join(', ')}`),
      ),
    }
  })
}
