/** The public face in Node: typed questions, typed answers, faults with closed codes, and the same numbers as the command line. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, expectTypeOf, it } from 'vitest'
import * as face from '../../src/index.js'
import { threads } from '../../src/node.js'
import { call } from '../cli/in-process.js'
import { demoFolder } from '../demo.js'
import { askAll } from './questions.js'

const text = readFileSync(path.join(demoFolder, 'tape-choice.yaml'), 'utf8')

it('answers as the command line does', async () => {
  const argv = ['run', 'tape-choice.yaml', '--shifts', '6', '--workers', '1', '--json', '--no-files']
  const { out } = await call(argv, { cwd: demoFolder })
  const line = face.loadScenario(text, { name: 'tape-choice.yaml' })
  const { document } = await face.run(line, { shifts: 6, moment: false })
  expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(document)))
})

it('gives figures and differences by the name of their measure', async () => {
  const line = face.loadScenario(text)
  const answer = await face.compare(line, { variants: ['three-inch'], shifts: 20 })
  const { variants, differences } = answer.document
  expect(answer.figure('three-inch', 'throughput')).toBe(variants['three-inch']!.measures.throughput)
  expect(answer.figure('base', 'equipment.sealer.jams')?.unit).toBe('count')
  expect(answer.difference('three-inch', 'throughput')).toBe(differences['three-inch']!.throughput)
  expect(answer.difference('base', 'throughput')).toBeUndefined()
  expect(answer.figure('nobody', 'throughput')).toBeUndefined()
  expectTypeOf(answer.difference).parameter(1).toEqualTypeOf<face.MeasureName>()
})

it('takes values of its own for one question, and leaves the scenario as it was', async () => {
  const line = face.loadScenario(text)
  const before = line.scenario.study.shifts
  const { document } = await face.run(line, {
    shifts: 3,
    seed: 'mine',
    confidence: '90 %',
    set: ['target=1 cases/min'],
  })
  expect(document.made).toMatchObject({ shifts: 3, seed: 'mine', confidence: 0.9 })
  expect(document.target).toBeCloseTo(1 / 60, 12)
  expect(line.scenario.study.shifts).toBe(before)
})

it('gives the same with threads', async () => {
  const line = face.loadScenario(text)
  // threads need a built file: `npm test` builds first
  const executor = threads(2, new URL('../../.build/cli/worker.js', import.meta.url))
  try {
    const one = await face.run(line, { shifts: 8 })
    const other = await face.run(line, { shifts: 8 }, { executor })
    expect(other.document).toEqual(one.document)
  } finally {
    await executor.close()
  }
})

it('tells how far it is, and ends when it is told to', async () => {
  const line = face.loadScenario(text)
  const controller = new AbortController()
  const seen: number[] = []
  const watch = ({ total }: face.Extent): face.Progress => ({
    update(done) {
      seen.push(done / total)
      if (done >= 5) controller.abort()
    },
    stop: () => seen.push(-1),
  })
  const run = face.run(line, { shifts: 1000 }, { signal: controller.signal, watch })
  await expect(run).rejects.toMatchObject({ code: 'interrupted' })
  expect(seen.at(-1)).toBe(-1)
  expect(seen.length).toBeLessThan(200)
})

it('says by closed codes what must change', async () => {
  const line = face.loadScenario(text)
  const code = (promise: Promise<unknown>) => promise.catch((error: face.Fault) => error.code)
  expect(await code(face.run(line, { require: ['nothing >= 3'] }))).toBe('asked')
  expect(await code(face.compare(line, { variants: ['nobody'] }))).toBe('asked')
  expect(await code(face.run(line, { set: ['line.infeed.length=-3 m'] }))).toBe('scenario')
  expect(() => face.loadScenario('line: {')).toThrow(face.ScenarioError)
})

it('answers all questions, with pages and rows', async () => {
  const told = await askAll(face, text)
  expect(told.documents.map(({ command }) => command)).toEqual(['run', 'compare', 'size', 'sweep'])
  expect(told.check.command).toBe('check')
  expect(told.throughput?.mean).toBeGreaterThan(0)
  expect(told.rows.map((rows) => rows.map(([name]) => name))).toEqual([
    ['shifts.csv'],
    ['shifts.csv', 'differences.csv'],
    ['designs.csv'],
    ['designs.csv', 'differences.csv'],
  ])
  for (const page of told.pages)
    expect([page.slice(0, 15), page.slice(-8)]).toEqual(['<!doctype html>', '</html>\n'])
  expect(told.trace).toContain('arrives')
})
