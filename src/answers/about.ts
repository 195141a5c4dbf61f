/** What a result document tells of its study beside the figures, so that a report can be made of the document alone: its scenario, and what the check finds of its designs. */

import { checkScenario } from '../hand/check.js'
import { type CheckFinding, codes, severities } from '../hand/finding.js'
import type { HandCalculation } from '../hand/hand.js'
import { droppedOf } from '../scenario/dropped.js'
import { isMap } from '../scenario/is-map.js'
import type { Loaded } from '../scenario/load.js'
import type { ReadScenario } from '../scenario/read.js'
import type { Scenario } from '../scenario/schema.js'
import { flowText } from './flow.js'
import type { WarnedDesign } from './warning.js'

/** A design with what `check` finds of it; the name of the scenario itself is null. */
export interface CheckedDesign {
  name: string | null
  scenario: Scenario
  findings: readonly CheckFinding[]
  /** What the check has worked out by hand. */
  hand: HandCalculation
}

/** A design checked; `placeOf`: where its keys stand in the file, of one that is not given there as it is nowhere. */
export function checkedDesign(
  name: string | null,
  scenario: Scenario,
  placeOf: Loaded['placeOf'] = () => null,
): CheckedDesign {
  const { findings, hand } = checkScenario({ scenario, placeOf })
  return { name, scenario, findings, hand }
}

/** The scenario itself, and designs beside it. */
export const checkedDesigns = (
  { scenario, placeOf }: Pick<Loaded, 'scenario' | 'placeOf'>,
  designs: readonly { name: string; scenario: Scenario }[] = [],
): CheckedDesign[] => [
  checkedDesign(null, scenario, placeOf),
  ...designs.map((design) => checkedDesign(design.name, design.scenario)),
]

/** What speaks against a design. */
export const warnedDesign = ({ name, scenario, findings }: CheckedDesign): WarnedDesign => ({
  name,
  errors: findings
    .filter(({ severity }) => severity === 'error')
    .map((finding) => ({ ...finding, meaning: codes[finding.code] })),
  dropped: droppedOf(scenario),
})

/** A design that is not checked: what its cost leaves out. */
export const pricedDesign = ({ scenario }: { scenario: Scenario }): WarnedDesign => ({
  ...{ name: null, errors: [] },
  dropped: droppedOf(scenario),
})

/** A finding of the check, as a report repeats it. */
interface ToldFinding extends Pick<CheckFinding, 'path' | 'message' | 'basis' | 'fix'> {
  severity: 'error' | 'warning'
  code: string
  /** The design that it is about; null: the scenario as it stands. */
  design: string | null
}

/** The study in the words of its scenario, and what the check finds. Null where the scenario does not say. */
export interface About {
  /** The first comment of the file that asks something. */
  question: string | null
  purpose: string | null
  decision: string | null
  dataSource: string | null
  validatedBy: string | null
  /** Errors and warnings, the worst first. */
  findings: ToldFinding[]
  /** What the scenario gives itself, by path, as a file would have it. */
  given: { path: string; value: string }[]
}

/** Letters of a value that is repeated in a report: a long list of orders stands in the scenario. */
const mostLetters = 300

/** Findings of the check that a reader must know: errors and warnings. */
const toldOf = ({ name, findings }: CheckedDesign): ToldFinding[] =>
  findings.flatMap(({ severity, code, path, message, basis, fix }) =>
    severity === 'note' ? [] : [{ severity, code, path, message, basis, fix, design: name }],
  )

/** `designs` are compared with the scenario: what is found of them too is told once. `checked`: what the check finds of all of them. */
export function aboutOf(
  loaded: Pick<ReadScenario, 'scenario' | 'placeOf' | 'question' | 'resolved' | 'assumed' | 'shiftsSha256'>,
  designs: readonly { name: string; scenario: Scenario }[] = [],
  checked: readonly CheckedDesign[] = checkedDesigns(loaded, designs),
): About {
  const { study } = loaded.scenario
  const [own, ...others] = checked.map(toldOf) as [ToldFinding[], ...ToldFinding[][]]
  const known = new Set(own.map(sameness))
  const findings = [...own, ...others.flat().filter((finding) => !known.has(sameness(finding)))]
  return {
    question: loaded.question,
    purpose: study.purpose ?? null,
    decision: study.decision ?? null,
    dataSource: study['data-source'] ?? null,
    validatedBy: validatedBy(study['validated-by'], loaded.shiftsSha256),
    findings: severities.flatMap((severity) => findings.filter((each) => each.severity === severity)),
    given: given(loaded),
  }
}

const sameness = ({ code, path, message }: ToldFinding) => JSON.stringify([code, path, message])

/** Keys that are told elsewhere in a report. */
const toldElsewhere = new Set(['title', 'study', 'variants', 'size'])

/** The scenario without what is assumed, in lines of a readable size. */
function given({ resolved, assumed }: Pick<Loaded, 'resolved' | 'assumed'>): About['given'] {
  const unsaid = new Set(assumed.map(({ path }) => path))
  return Object.entries(resolved)
    .filter(([key]) => !toldElsewhere.has(key) && !unsaid.has(key))
    .flatMap(([key, value]) => linesOf([key], own(value, [key], unsaid)))
}

const isEmpty = (node: unknown): boolean => isMap(node) && Object.keys(node).length === 0

/** A value without the keys that nobody named, and without maps that held nothing else. */
function own(node: unknown, path: readonly string[], unsaid: ReadonlySet<string>): unknown {
  if (!isMap(node)) return node
  const named = Object.entries(node).filter(([key]) => !unsaid.has([...path, key].join('.')))
  return Object.fromEntries(
    named
      .map(([key, value]) => [key, own(value, [...path, key], unsaid), value] as const)
      .filter(([, left, value]) => !(isEmpty(left) && !isEmpty(value))),
  )
}

/** A distribution and the like in one line, what holds several of them key by key. */
function linesOf(path: readonly string[], node: unknown): About['given'] {
  const isOneLine = !isMap(node) || path.length > 2 || (path.length > 1 && !Object.values(node).some(isMap))
  if (!isOneLine) return Object.entries(node).flatMap(([key, value]) => linesOf([...path, key], value))
  const value = flowText(node)
  if (value === '{}') return []
  return [
    {
      path: path.join('.'),
      value: value.length > mostLetters ? `${value.slice(0, mostLetters - 1)}…` : value,
    },
  ]
}

/** Letters of the hash that are written down. */
const letters = 12
const written = / \[shifts ([0-9a-f]{12})\]$/

/** The words as a scenario has them, with what they cover. */
export const coveringWords = (words: string, shiftsSha256: string): string =>
  `${words} [shifts ${shiftsSha256.slice(0, letters)}]`

/** The words of a scenario as a report prints them; what anybody wrote by hand stands as it is. */
export function validatedBy(words: string | undefined, shiftsSha256: string): string | null {
  if (words === undefined) return null
  const covers = written.exec(words)?.[1]
  if (covers === undefined) return words
  const said = words.replace(written, '')
  return covers === shiftsSha256.slice(0, letters)
    ? said
    : `${said}. The scenario has changed since then, so this no longer applies`
}
