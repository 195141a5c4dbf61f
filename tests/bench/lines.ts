/** The lines that the bench simulates: the demos, the reference line, and the reference line made longer. */
import { readFileSync } from 'node:fs'
import { parse, stringify } from 'yaml'
import { loadForCommand } from '../../src/cli/scenario.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

/** Files are found from the folder of the project, where npm runs the bench. */
export const referenceFile = 'tests/bench/reference.yaml'
/** A line with every key that the floor of a plant has. */
export const mixedFile = 'tests/bench/mixed.yaml'

/** The line of a scenario file, with the CSV files that it names; `engine`: who simulates, if not as the scenario has it. */
export async function lineOf(file: string, engine?: Line['engine']): Promise<Line> {
  const { stdin, stdout, stderr, env } = process
  const io = { stdin, stdout, stderr, env, cwd: process.cwd(), onInterrupt: () => () => {} }
  return new Line((await loadForCommand(file, { set: [] }, io)).scenario, engine)
}

/**
 * The reference line of `pieces` pieces, its source counted: five as it stands, more with as many further outfeeds, each 8 m long
 * and passed by every case; over shifts of `hours`.
 */
export function longLine(pieces: number, hours: number): Line {
  const given = parse(readFileSync(referenceFile, 'utf8'))
  const { palletiser, ...before } = given.line
  const further = Array.from({ length: pieces - 5 }, (_, index) => [`outfeed-${index + 2}`, before.outfeed])
  const line = { ...before, ...Object.fromEntries(further), palletiser }
  return new Line(loadScenario(stringify({ ...given, line, shift: { length: `${hours} h` } })).scenario)
}
