/** From what the target asks for to what comes out: what more or fewer cases come, and where the line loses them. Means of a shift. */
import { shiftTarget } from '../../answers/shift-target.js'
import type { RunResult } from './document.js'

/** A step of a shift in cases; what is lost counts below 0. */
export interface DemandStep {
  key: 'asked' | 'offered' | 'waits' | 'turned-away' | 'spoilt' | 'rejected' | 'unsealed' | 'inside' | 'out'
  label: string
  cases: number
}

/** Less of a case a shift than this shows nowhere. */
const hair = 0.05

/**
 * The steps, which add up exactly: from the target, or without one from what would come if nobody ever waited for room, to the
 * good cases out. People who wait bring nothing meanwhile, so at their own pace `arrived / (1 - share waited)` would come. Null where
 * nothing is known of arrivals. What is left over is still in the line, or was at the start.
 */
export function demandSteps(result: RunResult): DemandStep[] | null {
  const { arrivals, measures, equipment } = result
  const sources = Object.entries(arrivals)
  const out = measures.output?.mean ?? null
  if (out === null || sources.length === 0) return null
  if (sources.some(([, { arrived }]) => arrived?.mean == null)) return null
  const target = shiftTarget(result)?.cases ?? null
  const arrived = sum(sources.map(([, of]) => of.arrived!.mean!))
  const waited = sum(
    sources.map(([, of]) => {
      const share = Math.min(0.999, of.blocked?.mean ?? 0)
      return (of.arrived!.mean! * share) / (1 - share)
    }),
  )
  const turned = sum(sources.map(([, of]) => of.arrived!.mean! * (of['turned-away']?.mean ?? 0)))
  const spoilt = sum(
    Object.values(equipment).map(({ pieces, measures }) =>
      pieces ? 0 : (measures['cases-lost']?.mean ?? 0),
    ),
  )
  const [rejected, unsealed] = [measures.rejected?.mean ?? 0, measures.unsealed?.mean ?? 0]
  const inside = arrived - turned - spoilt - rejected - unsealed - out
  const names = sources.map(([name]) => name)
  const who = names.length === 1 ? names[0]! : 'those who feed the line'
  const more = target === null ? 0 : arrived + waited - target
  const between: DemandStep[] = [
    { key: 'offered', label: more > 0 ? `${who} would bring more` : `${who} brings fewer`, cases: more },
    { key: 'waits', label: `${who} waits for room`, cases: -waited },
    { key: 'turned-away', label: 'turned away at the start', cases: -turned },
    { key: 'spoilt', label: 'spoilt in jams', cases: -spoilt },
    { key: 'rejected', label: 'rejected', cases: -rejected },
    { key: 'unsealed', label: 'left unsealed, unnoticed', cases: -unsealed },
    {
      key: 'inside',
      label: inside < 0 ? 'in the line from before' : 'still in the line at the end',
      cases: -inside,
    },
  ]
  return [
    {
      key: 'asked',
      label: target === null ? `${who} would bring` : 'the target asks for',
      cases: target ?? arrived + waited,
    },
    ...between.filter(({ cases }) => Math.abs(cases) >= hair),
    { key: 'out', label: 'good cases out', cases: out },
  ]
}

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0)
