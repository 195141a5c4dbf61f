/** What must change in a scenario beside the values of a log: what its times hold already, and the clock that they are counted on. */
import type { Scenario } from '../../scenario/schema.js'
import type { FittedInput } from './document.js'

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
  { crew }: Scenario,
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
    const names = Object.entries(crew).flatMap(([name, { does }]) =>
      does.some((each) => each === skill) && !done.has(name) ? [name] : [],
    )
    for (const name of names) done.add(name)
    if (names.length === 0) return input
    const others = names.flatMap((name) =>
      crew[name]!.does.filter((each) => !Object.values(skillOf).includes(each)),
    )
    return {
      ...input,
      also: { ...input.also, ...Object.fromEntries(names.map(stayThere)) },
      remarks: [
        ...input.remarks,
        ...(others.length === 0
          ? []
          : [
              {
                code: 'walk-within' as const,
                text: `other work of the same crew loses its walk too: ${others.join(', ')}`,
              },
            ]),
      ],
    }
  })
}
