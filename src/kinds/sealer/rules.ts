/** Rules between the keys of a sealer, its heads, the cases and the tape. */
import { pathInFile } from '../../scenario/alike.js'
import type { Skill } from '../../scenario/calls.js'
import type { Report } from '../../scenario/finding.js'
import { nearest } from '../../scenario/nearest.js'
import { millimetres, type PieceRules, type Place, perMinute, tooLong } from '../../scenario/piece-rules.js'
import type { Scenario } from '../../scenario/schema.js'
import type { Path } from '../../scenario/walk.js'
import { casesPerRoll, drawnLength } from '../../trade/tape.js'
import { headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

/** A belt may run this much above a head's rating: 80 ft/min is commonly written as 24.4 m/min. */
const ratingTolerance = 1.001

/** Rounding of a length, mm. */
const hair = 1e-6

export const sealerRules: PieceRules<SealerKeys> = {
  check(sealer, place, report) {
    checkBelts(sealer, place, report)
    checkHeads(sealer, place, report)
    checkRoll(place, report)
    checkChanges(sealer, place, report)
  },
  skills(sealer) {
    const skills: Skill[] = ['roll-change']
    if (sealer.blade) skills.push('blade')
    if (sealer['size-setting'].by === 'crew') skills.push('size-setting')
    return skills
  },
}

function checkBelts(sealer: SealerKeys, { path, longest }: Place, report: Report): void {
  if (longest && longest.length > sealer.bed)
    report([...path, 'bed'], 'conflict', ...tooLong(longest, sealer.bed, 'the driven belts'))
  const [slowest, { 'rated-speed': rating }] = headsOf(sealer).reduce((slow, each) =>
    each[1]['rated-speed'] < slow[1]['rated-speed'] ? each : slow,
  )
  if (sealer['belt-speed'] > rating * ratingTolerance)
    report(
      [...path, 'belt-speed'],
      'conflict',
      `faster than the rating of the ${slowest} head: ${perMinute(rating)}`,
      `at most ${perMinute(rating)}, or a head with a higher rating`,
    )
  for (const [index, { at }] of (sealer.speeds ?? []).entries())
    if (at > rating * ratingTolerance)
      report(
        [...path, 'speeds', index, 'at'],
        'conflict',
        `faster than the rating of the ${slowest} head: ${perMinute(rating)}`,
        `at most ${perMinute(rating)}, or a head with a higher rating`,
      )
}

function checkHeads(sealer: SealerKeys, { scenario, path }: Place, report: Report): void {
  const { width } = scenario.tape
  for (const [which, head] of headsOf(sealer)) {
    const at = [...path, 'heads', which]
    if (head.position > sealer.bed)
      report(
        [...at, 'position'],
        'conflict',
        `the head is beyond the driven belts (${millimetres(sealer.bed)})`,
        `at most ${millimetres(sealer.bed)}`,
      )
    const [narrowest, widest] = head.takes
    if (width < narrowest || width > widest)
      report(
        [...at, 'takes'],
        'conflict',
        `the tape of ${millimetres(width)} does not fit this head: ${millimetres(narrowest)} to ${millimetres(widest)}`,
        `another tape width, or heads that take it: ${takingAll(sealer, scenario, path)}`,
      )
  }
}

/** What changes along with the tape for all heads to take it, as `--set` and `--what-if` have it: `line.sealer.heads.top.takes=[36 mm, 72 mm]; ...`. */
function takingAll(sealer: SealerKeys, { tape: { width }, alike }: Scenario, path: Path): string {
  const [, name] = alike ? pathInFile(path, alike) : path
  return headsOf(sealer)
    .filter(([, { takes }]) => width < takes[0] || width > takes[1])
    .map(([which, { takes }]) => {
      // whole millimetres that hold it: 48.4 mm is between 48 and 49
      const least = Math.floor(Math.min(width, takes[0]) * 1000 + hair)
      const most = Math.ceil(Math.max(width, takes[1]) * 1000 - hair)
      return `line.${name}.heads.${which}.takes=[${least} mm, ${most} mm]`
    })
    .join('; ')
}

function checkRoll({ scenario: { tape }, longest }: Place, report: Report): void {
  if (!longest) return
  const strip = drawnLength(longest.length, tape.leg, tape.stretch)
  if (casesPerRoll(tape.roll - tape['lost-per-roll'], strip) < 1)
    report(
      ['tape', 'roll'],
      'conflict',
      `one roll is not enough to close one case \`${longest.name}\``,
      'a longer roll, or a smaller `lost-per-roll`',
    )
}

/** A matrix of size settings names cases of the scenario, and every change from one to another. */
function checkChanges(sealer: SealerKeys, { scenario, path }: Place, report: Report): void {
  const { between } = sealer['size-setting']
  if (!between) return
  const at = [...path, 'size-setting', 'between']
  const kinds = Object.keys(scenario.cases)
  const known = (name: string, where: typeof path) => {
    if (kinds.includes(name)) return
    report(where, 'no-such-path', `\`${name}\` is not a case of this scenario`, nearest(name, kinds))
  }
  for (const [from, row] of Object.entries(between)) {
    known(from, [...at, from])
    for (const to of Object.keys(row)) known(to, [...at, from, to])
    if (row[from])
      report([...at, from, from], 'conflict', `\`${from}\` to \`${from}\` is not a change`, 'remove it')
  }
  const missing = kinds.flatMap((from) =>
    kinds.filter((to) => to !== from && !between[from]?.[to]).map((to) => `${from} to ${to}`),
  )
  if (missing.length > 0)
    report(
      at,
      'missing-key',
      `every change needs its time: ${listed(missing)} ${missing.length === 1 ? 'is' : 'are'} missing`,
      'add them, with `0 s` for no changeover; or use `per-mm` instead of the table',
    )
}

/** The first few of many, in words. */
const listed = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : names.join(', ')
