/** The first screen of a check: whether the line can work, what pencil and paper expect of it, findings by their code. */

import { firstOf, inSentences, part, plain, safetyPart, valuesText } from '../../answers/first-screen.js'
import { byKey } from '../../answers/warning.js'
import { wordsFor } from '../../catalogue/printed-units.js'
import { codes, type FindingCode, othersText, type Severity, severities } from '../../hand/finding.js'
import { counted, grouped, listed, percentText, sentences } from '../../report/format.js'
import type { Said, Screen, Tone, Verdict } from '../../report/screen.js'
import type { CheckResult, FindingResult } from './document.js'

/** The first screen of a check. */
export function checkScreen(result: CheckResult): Screen {
  const { made, display, hand } = result
  return {
    title: made?.scenario.title ?? 'Check',
    display,
    verdict: verdictOf(result),
    parts: [
      ...groupedPart('Errors', 'error', 'error', result),
      ...part('By hand', [handText(result)]),
      ...part('Limit', [result.canWork && hand && plain(hand.sentence)]),
      ...groupedPart('Warnings', 'warning', 'warning', result),
      ...part('Read as', [readAsText(result)]),
      ...part('Notes', [notesText(result)]),
      ...part('Next', nextOf(result)),
      ...part('Basis', [hand && valuesText({ ...result, isDrawn: false })]),
      ...safetyPart,
    ],
  }
}

/** Whether anything says that the line cannot work, or that it misses its target. */
function verdictOf({ canWork, counts, hand, findings }: CheckResult): Verdict {
  const found = listed(severities.map((each) => counted(counts[each], each)))
  if (!hand) return { word: 'CANNOT BE READ', tone: 'error', text: `: ${counted(counts.error, 'error')}.` }
  if (!canWork) return { word: 'CANNOT WORK', tone: 'error', text: `as described: ${found}.` }
  if (findings.some(({ code }) => code === 'target-above-expected'))
    return { word: 'DOES NOT HOLD', tone: 'error', text: `its target by hand, though it can work: ${found}.` }
  return {
    word: 'NOTHING FOUND',
    tone: counts.warning > 0 ? 'warning' : 'good',
    text: `that stops this line: ${found}.`,
  }
}

/** The expected output against the target, and how far off such a figure usually is. */
function handText({ hand, display }: CheckResult): string | null {
  if (!hand) return null
  const words = wordsFor(display)
  const { throughput, perShift, why, atMost, usualError } = hand.expected
  const target = hand.target.value
  const asked = target === null ? 'no target is given.' : `the target is ${words.rate(target)}.`
  if (throughput.value === null)
    return `At most ${words.rate(atMost.value ?? 0)}; ${asked} By hand there is no closer figure: ${why}.`
  return `${words.rate(throughput.value)} expected, ${words.count(perShift.value ?? 0)} good cases a shift; ${asked} In ${(usualError.often.value ?? 0) * 10} of 10 lines this is within ${percentText(usualError.within.value ?? Number.NaN, 2)} of the simulation.`
}

/** Kinds of finding that are told in full before they are named. */
const mostTold: Record<Severity, number> = { error: 2, warning: 1, note: 0 }

/** Findings by their code: `52 of 300 cases (a, b, c)`, what is found of the first of them, and the fix. */
function groupedPart(head: string, severity: Severity, tone: Tone, result: CheckResult): Said[] {
  const groups = byCode(result.findings.filter((each) => each.severity === severity))
  const rest = groups.slice(mostTold[severity])
  return part(
    head,
    [
      ...groups.slice(0, mostTold[severity]).map((group) => groupText(group, result)),
      rest.length > 0 && `Also: ${inSentences(briefly(rest, 3, severity))}`,
    ],
    tone,
  )
}

/** Findings of one code, the worst first. */
type Group = readonly [FindingResult, ...FindingResult[]]

const byCode = (findings: readonly FindingResult[]): Group[] =>
  [...byKey(findings, ({ code }) => code).values()].map(
    (group) => group.sort((a, b) => (b.over ?? 0) - (a.over ?? 0)) as [FindingResult, ...FindingResult[]],
  )

/** Cases of which the same was found and is not told. */
const othersOf = (group: Group): number => group.reduce((sum, { others = 0 }) => sum + others, 0)

function groupText(group: Group, result: CheckResult): string {
  const [{ code, message, fix, path, place }] = group
  const where = place && place.line > 0 ? `, line ${place.line}` : ''
  const who = group.length > 1 ? `${manyText(group, result)}: ` : ''
  const at = group.length > 1 || path === '' ? '' : `${path}${where}; `
  // how many others there are stands before it
  const others = othersText(group.length + othersOf(group), group.length)
  const found = message.endsWith(others) ? message.slice(0, -others.length) : message
  return sentences(`${who}${plain(found)}`, `Fix: ${plain(fix)}.`, `(${at}help: ${code})`).join(' ')
}

/** Cases that are named before the rest is counted. */
const mostNamed = 3

/** `52 of 300 cases, worst a, b and c`; of what are no cases `3 times, at a, b and c`. */
function manyText(group: Group, { cases, otherCases }: CheckResult): string {
  const paths = group.map(({ path }) => path)
  const kinds = new Set(paths.map((path) => /^cases\.([^.]+)/.exec(path)?.[1]))
  if (kinds.has(undefined)) return `${counted(group.length, 'time')}, at ${firstOf(paths)}`
  const all = Object.keys(cases).length + (otherCases?.count ?? 0)
  const found = kinds.size + othersOf(group)
  const named = [...(kinds as Set<string>)]
  return found <= mostNamed
    ? `${grouped(found, 0)} of ${counted(all, 'case')}, ${listed(named)}`
    : `${grouped(found, 0)} of ${counted(all, 'case')}, worst ${listed(named.slice(0, mostNamed))}`
}

/** Values in plain words that are told. */
const mostReadAs = 2

/** What values in plain words are read as. */
function readAsText({ findings }: CheckResult): string {
  const said = findings.filter(({ code }) => code === 'read-as').map(({ message }) => plain(message))
  const more = said.length - mostReadAs
  return sentences(
    ...said.slice(0, mostReadAs),
    more > 0 && `${counted(more, 'more value')} with --full.`,
  ).join(' ')
}

/** What groups of findings are about, and how many kinds more there are. */
function briefly(groups: readonly Group[], most: number, severity: Severity): string[] {
  const told = groups.map(([{ code }]) => codes[code as FindingCode] ?? code)
  const more = told.length - most
  return [...told.slice(0, most), ...(more > 0 ? [`${counted(more, 'more kind')} of ${severity}`] : [])]
}

/** Kinds of note that are named. */
const mostNotes = 2

/** Notes by what they are about. */
function notesText({ findings }: CheckResult): string | null {
  const groups = byCode(findings.filter(({ severity, code }) => severity === 'note' && code !== 'read-as'))
  if (groups.length === 0) return null
  const told = inSentences(briefly(groups, mostNotes, 'note'))
  return `${told.charAt(0).toUpperCase()}${told.slice(1)}`
}

/** What to do next. */
function nextOf({ canWork, hand }: CheckResult): string[] {
  if (!hand) return ['Correct the file, and check again.']
  if (!canWork) return ['Fix the errors, and check again.']
  return ['tapeshift run says how often the line reaches its target when arrivals and stops vary.']
}
