/** Runs a scenario through the command line and holds figures of its result against published ones. */
import { Readable, Writable } from 'node:stream'
import { expect } from 'vitest'
import type { Figure } from '../../src/catalogue/figure.js'
import { main } from '../../src/cli/program.js'
import type { RunResult } from '../../src/questions/run/document.js'

/** One seed for every check in this folder: none was picked to make a check pass. */
const seed = 'published'

/** The parts of a scenario as YAML flow text; what is not given has a plain default. */
export interface Parts {
  arrivals: string
  line: string
  /** Length of a shift, such as `50 h`. */
  length: string
  shifts: number
  /** Other keys of the shift, such as `run-out: 1 h, breaks: [...]`. */
  shift?: string
  cases?: string
  tape?: string
  crew?: string
  /** Confidence of the intervals, such as `90 %`. */
  confidence?: string
}

class Collected extends Writable {
  text = ''
  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

/** The scenario as a user would write it. */
function scenarioText(parts: Parts): string {
  const lines = [
    'title: a published check',
    `cases: ${parts.cases ?? '{box: {length: 400 mm, width: 300 mm, height: 300 mm}}'}`,
    `arrivals: ${parts.arrivals}`,
    `line: ${parts.line}`,
    `shift: {length: ${parts.length}, ${parts.shift ?? ''}}`,
  ]
  for (const key of ['tape', 'crew'] as const) if (parts[key]) lines.push(`${key}: ${parts[key]}`)
  return `${lines.join('\n')}\n`
}

/** Simulates with `run - --json` and gives back the result document. */
export async function simulate(parts: Parts): Promise<RunResult> {
  const stdout = new Collected()
  const stderr = new Collected()
  const options = ['--json', '--no-files', '--workers', '1', '--seed', seed, '--shifts', String(parts.shifts)]
  if (parts.confidence) options.push('--confidence', parts.confidence)
  const code = await main(['run', '-', ...options], {
    stdin: Readable.from([scenarioText(parts)]),
    stdout,
    stderr,
    env: {},
    cwd: '/',
    onInterrupt: () => () => {},
  })
  expect(code, stderr.text).toBe(0)
  return JSON.parse(stdout.text) as RunResult
}

/**
 * Asserts that a published value lies within four standard errors of the mean (two half-widths of the 95 %
 * interval), and that the half-width is at most the share `power` of that value: a wide interval would prove
 * nothing.
 */
export function expectAround(figure: Figure | undefined, value: number, power: number): void {
  expectSumAround([figure], value, power)
}

/**
 * The same for a sum of figures; its half-width is taken as the sum of theirs, which holds however they hang
 * together.
 */
export function expectSumAround(
  figures: readonly (Figure | undefined)[],
  value: number,
  power: number,
): void {
  expect(figures.length).toBeGreaterThan(0)
  for (const figure of figures) expect(figure?.mean, figure?.label).toBeTypeOf('number')
  const labels = figures.map((figure) => figure!.label).join(' + ')
  const mean = figures.reduce((sum, figure) => sum + figure!.mean!, 0)
  const half = figures.reduce((sum, figure) => sum + figure!.high! - figure!.mean!, 0)
  expect(half, `half-width of ${labels}`).toBeLessThanOrEqual(power * value)
  expect(Math.abs(mean - value), `${labels}: ${mean} for ${value}`).toBeLessThanOrEqual(2 * half)
}
