/**
 * Golden shifts: what the first two shifts of each demo give, to the last digit. These numbers say nothing about being
 * right; they change only with a major version. After a change that is meant to change them: `npx vitest run -u`.
 */
import { describe, expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { demos, loadDemo } from '../demo.js'

describe('golden shifts', () => {
  it.each(demos)('of %s', async (name) => {
    const line = new Line(await loadDemo(name))
    const shifts = [1, 2].map((shift) => line.simulate('golden', shift))
    const rows = line.columns.map(
      ({ measure, part }, index) =>
        `${measure.path.join('.')} ${part}: ${shifts.map((shift) => shift.values[index]).join(' ')}`,
    )
    await expect(`${rows.join('\n')}\n`).toMatchFileSnapshot(`golden/${name}.txt`)
  })
})
