/** Can this be built and run at all? Findings and the hand calculation, without simulating. */
import { repeatOf } from '../../answers/repeat.js'
import { checkScenario } from '../../hand/check.js'
import { likelyFigures } from '../../hand/likely.js'
import type { ReadScenario } from '../../scenario/read.js'
import { runtime, version } from '../../version.js'
import { type CheckResult, checkResult } from './document.js'

/** Answers the question. */
export function check(loaded: ReadScenario): CheckResult {
  const { scenario, sha256, asked } = loaded
  const checked = { ...checkScenario(loaded), likely: likelyFigures(loaded) }
  return checkResult(loaded, checked, {
    version,
    node: runtime,
    scenario: { title: scenario.title, sha256 },
    repeat: repeatOf('check', asked, { variant: asked.variant }),
  })
}
