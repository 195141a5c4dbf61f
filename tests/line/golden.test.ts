/**
 * Golden shifts: what the first two shifts of each demo give, to the last digit. These numbers say nothing about being
 * right; they change only with a major version. After a change that is meant to change them: `npx vitest run -u`.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

describe('golden shifts', () => {
  it.each(['soap-works', 'refill-hall'])('of %s', async (name) => {
    const text = readFileSync(new URL(`../../scenarios/${name}.yaml`, import.meta.url), 'utf8')
    const line = new Line(loadScenario(text).scenario)
    const shifts = [1, 2].map((shift) => line.simulate('golden', shift))
    const rows = line.columns.map(
      ({ measure, part }, index) =>
        `${measure.path.join('.')} ${part}: ${shifts.map((shift) => shift.values[index]).join(' ')}`,
    )
    await expect(`${rows.join('\n')}\n`).toMatchFileSnapshot(`golden/${name}.txt`)
  })
})
