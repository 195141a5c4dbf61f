/** Shifts that begin with another than the first: the same as if all before them had been simulated too. */
import { expect, it } from 'vitest'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'
import { inProcess } from '../../src/shifts/in-process.js'
import { replicate } from '../../src/shifts/replicate.js'
import { smallLine } from '../cli/in-process.js'

it('from shift 31 on: those of these numbers, in their order, and known ones are not simulated again', async () => {
  const { scenario } = loadScenario(smallLine)
  const line = new Line(scenario)
  const outputs = Array.from({ length: 5 }, (_, index) => line.simulate('fresh', 31 + index).outputs[0]!)
  expect(new Set(outputs).size).toBeGreaterThan(1)
  const order = { seed: 'fresh', scenario, first: 31, shifts: 5 }
  const simulated: number[] = []
  const onShifts = (from: number, results: readonly unknown[]) =>
    simulated.push(...results.map((_, index) => from + index))
  const { shifts, isComplete } = await replicate(inProcess(), { ...order, onShifts })
  expect([shifts.map((each) => each.outputs[0]), isComplete]).toEqual([outputs, true])
  expect(simulated).toEqual([31, 32, 33, 34, 35])
  const known = new Map([[33, shifts[2]!]])
  simulated.length = 0
  const again = await replicate(inProcess(), { ...order, onShifts, known })
  expect(again.shifts).toEqual(shifts)
  expect(simulated).toEqual([31, 32, 34, 35])
  // and from the first one, where nobody says
  const all = await replicate(inProcess(), { seed: 'fresh', scenario, shifts: 35 })
  expect(all.shifts.slice(30)).toEqual(shifts)
})
