/** Findings on people and shifts: load, breaks, hasty clearing, rolls that run out together, cases that leave open. */
import { startsFull } from '../../kinds/sealer/rolls.js'
import { has } from '../../kinds/traits.js'
import { isolation, jamsOf } from '../../scenario/jams.js'
import { meanOf } from '../../scenario/law.js'
import { loadLimit, workAllowance } from '../../trade/workload.js'
import type { Rule } from '../finding.js'
import { unsealedShare, unseenShare } from '../flow.js'
import { hasSealer } from '../pace.js'

/** A clearing time below this leaves no room to isolate the machine first, s. Project rule. */
const leastClearing = 30
/** A shift longer than this asks for a break, s. Directive 2003/88/EC, article 4, from memory. */
const longWithoutBreak = 6 * 3600

export const crewFindings: Rule = ({ hand: { crews }, words }, tell) => {
  for (const { name, load, occupied, other } of crews)
    if (load > loadLimit)
      tell.warning(
        'crew-load',
        ['crew', name],
        `The stops${occupied > 0 ? ' and flaps' : ''} of this line${other > 0 ? ', and other work,' : ''} take ${words.share(occupied + other)} of the time of \`${name}\`, or ${words.share(load)} with an allowance of ${words.share(workAllowance)}. More than ${words.share(loadLimit)} is too much${load > 1 ? ', and above 100 % it cannot be done' : ''}.`,
        'allowance: 29 CFR 525.12, as a floor; limit: common practice, no source',
        `add a person, or have a shorter walk,  ${other > 0 ? 'less other work, ' : ''}or fewer stops`,
      )
}

export const safetyFindings: Rule = ({ scenario, words }, tell) => {
  for (const [name, piece] of Object.entries(scenario.line)) {
    for (const { at, keys } of jamsOf(piece.jams)) {
      const mean = meanOf(keys.clear) + isolation(keys)
      if (mean >= leastClearing) continue
      tell.warning(
        'hasty-clearing',
        ['line', name, 'jams', ...at, 'clear'],
        `Clearing a jam takes ${words.time(mean)} on average in this scenario. That is too short to stop and isolate the machine first.`,
        'project rule: 30 s at least; lockout by 29 CFR 1910.147, ISO 14118',
        'give a time that includes isolation',
      )
    }
  }
}

export const breakFindings: Rule = ({ scenario, words }, tell) => {
  const { shift, crew } = scenario
  if (shift.breaks.length === 0) {
    if (shift.length > longWithoutBreak)
      tell.note(
        'no-breaks',
        ['shift'],
        `The shift of ${words.time(shift.length)} has no break.`,
        'Directive 2003/88/EC asks for one above 6 h (from memory); local law comes first',
        'add `breaks`',
      )
    return
  }
  const runsOn = shift['breaks-stop'] !== 'everything'
  const covers = Object.values(crew).some(({ does, breaks }) => breaks && does.includes('jams'))
  if (runsOn && hasSealer(scenario) && !covers)
    tell.note(
      'break-unattended',
      ['shift', 'breaks'],
      'Machines run during breaks while everybody who clears jams is away. A stop then lasts until the break is over.',
      'rule of the model',
      'give some of the crew their own breaks, or set `breaks-stop: everything`',
    )
}

export const rollStartFindings: Rule = ({ scenario, hand: { tape, line }, words }, tell) => {
  if (!startsFull(scenario) || !tape || tape.heads.length < 2) return
  const first = tape.heads.reduce((least, head) => (head.perRoll < least.perRoll ? head : least))
  const rate = (line.pieces.find(({ name }) => name === first.machine)?.perShift ?? 0) / line.working
  if (first.changes < 1 || !(rate > 0)) return
  tell.note(
    'roll-start',
    ['shift', 'rolls-start'],
    `Every shift starts with full rolls, so all heads of \`${first.machine}\` run out together, at about case ${words.count(first.perRoll + 1)}, ${words.time(first.perRoll / rate)} of work after the start.`,
    'derived',
    'set `rolls-start: part-used`, unless rolls are changed before each shift',
  )
}

export const unsealedFindings: Rule = ({ scenario, hand: { line }, words }, tell) => {
  const unsealed = unsealedShare(scenario)
  if (unsealed === 0) return
  const unseen = unseenShare(scenario)
  if (unseen === 0) return
  const blind = Object.entries(scenario.line).find(
    ([, piece]) => has(piece, 'tapes') && piece['roll-change']['low-tape-warning'] === 'none',
  )!
  tell.warning(
    'unsealed-unseen',
    ['line', blind[0], 'roll-change', 'low-tape-warning'],
    `\`${blind[0]}\` has no low-tape warning, so about ${words.share(unsealed)} of the cases pass an empty roll. Each shift ${words.count(unsealed * unseen * line.perShift)} leave the line open and unnoticed.`,
    'derived: cases until somebody notices, over cases a roll',
    'use heads with a warning, or an inspection that finds more',
  )
}
