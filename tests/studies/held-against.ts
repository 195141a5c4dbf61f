/** Records of a plant as it would write them down, held against models of which so many shifts are simulated once. */
import { readFileSync } from 'node:fs'
import { parse, stringify } from 'yaml'
import { type Executor, inProcess, loadScenario, type ReadRecord, validateScenario } from '../../src/index.js'
import { readRecord } from '../../src/record/read.js'
import type { Results, ShiftsTask, Task } from '../../src/shifts/work.js'
import { demoFolder } from '../demo.js'
import { type DatedShift, makeRecord } from '../record/make-record.js'
import { logsOf } from '../record/texts.js'

/** The record of the demo without its scanner, which was there on every third day. */
const { cases: _, ...withoutScanner } = parse(
  readFileSync(`${demoFolder}lindmoor-record/record.yaml`, 'utf8'),
).record
const recordFile = stringify({ record: withoutScanner })

/** Twenty days are what a fit of three months keeps back, or a month of a plant. */
export const daysOfEach = 20
const runs = 39
/** What the guide and `validate --help` name: the line has nearly 4 % in hand over its target of 8 cases a minute, so a model that is off by more may say the wrong thing. */
const margin = '3 %'
const pooled = 1500

/** So many shifts of a model, simulated once: each study takes others of them, in turn. */
export async function poolOf(scenario: string) {
  const own = inProcess()
  let pool: Results<ShiftsTask> | null = null
  let simulated = ''
  let offset = 0
  const executor: Executor = {
    ...own,
    async work<Asked extends Task>(task: Asked) {
      if (task.what !== 'shifts') throw new Error('only shifts are asked for')
      simulated ||= JSON.stringify(task.scenario)
      // all days have one shift and the same breaks: what simulates one of them simulates all
      if (JSON.stringify(task.scenario) !== simulated) return inProcess().work(task)
      pool ??= await own.work<ShiftsTask>({ ...task, design: 0, seed: 'pool', from: 1, to: pooled })
      return Array.from(
        { length: task.to - task.from + 1 },
        (_, index) => pool![(offset + task.from - 1 + index) % pooled]!,
      ) as Results<Asked>
    },
  }
  const loaded = loadScenario(scenario, { seed: 'held against' })
  return async (read: ReadRecord) => {
    const asked = { margin, runs, unseen: true }
    const { document } = await validateScenario(loaded, read, asked, { executor })
    offset += daysOfEach * runs
    return document
  }
}

export function recordOf(shifts: readonly DatedShift[], seed: string): ReadRecord {
  const files = Object.fromEntries(makeRecord(shifts, seed))
  const record = readRecord(recordFile, { readLog: logsOf(files) })
  return { record, name: 'record.yaml', sha256: '', files: [] }
}
