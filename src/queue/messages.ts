/** What asker and workers say to each other, each message with its schema: tasks, answers, and who is there. */
import * as z from 'zod'
import { digestOf, seal, unseal } from './seal.js'
import { fromBytes, toBytes } from './wire.js'

const name = z.string().min(1).max(200)
/** SHA-256 in hexadecimal digits. */
const sha256 = z.string().regex(/^[0-9a-f]{64}$/)
const shift = z.int().min(1)
const time = z.number().min(0)

const part = {
  /** Of the program: another may simulate other shifts. */
  version: name,
  seed: z.string().max(10_000),
  design: sha256,
  from: shift,
  to: shift,
}

const ofTask = z
  .discriminatedUnion('what', [
    z.strictObject({
      what: z.literal('shifts'),
      ...part,
      countFrom: time,
      isLean: z.boolean().optional(),
      eyes: z.strictObject({ seenFrom: time, grain: time }).optional(),
    }),
    z.strictObject({ what: z.literal('series'), ...part, instants: z.int().min(1).max(100_000) }),
  ])
  .refine(({ from, to }) => to >= from && to - from < 10_000, 'shifts in their order, not too many')

/** A task as it travels: its design by its hash. */
export type TaskSent = z.output<typeof ofTask>

const row = z.instanceof(Float64Array) as z.ZodType<Float64Array>
const ofShift = z.strictObject({ values: row, held: row, outputs: row, controls: row, stops: row.optional() })
const words = z.string().max(100_000)

const ofAnswer = z.union([
  z.strictObject({ shifts: z.array(ofShift) }),
  z.strictObject({ series: z.array(row) }),
  z.strictObject({
    standstill: z.strictObject({ piece: words, rule: words, fix: words, shift }),
  }),
  /** The model failed, or the thread that simulated ended again and again. */
  z.strictObject({ bug: words }),
  /** The design is not on the server any more. */
  z.strictObject({ missing: z.literal(true) }),
  /** The task could not be read, or may not be done here. */
  z.strictObject({ refused: words }),
])

/** What comes of a task. */
export type Answer = z.output<typeof ofAnswer>

const ofPresence = z.strictObject({
  is: z.enum(['worker', 'asker']),
  name,
  version: name,
  threads: z.int().min(0).max(1024),
  /** Shifts that it simulated since it began. */
  done: z.number().min(0),
})

/** Somebody who is there. */
export type Presence = z.output<typeof ofPresence>

/** Name of a task: a hash of all that its answer depends on, so that it is simulated once whoever asks. */
export const idOf = (task: TaskSent): string => `task-${digestOf(toBytes(task))}`

export const isId = (id: string): boolean => /^task-[0-9a-f]{64}$/.test(id)

export const taskToBytes = (task: TaskSent): Uint8Array => seal('task', idOf(task), toBytes(task))

/** Throws an `Error` where the bytes are no task of that name. */
export const taskOf = (id: string, bytes: Uint8Array): TaskSent =>
  ofTask.parse(fromBytes(unseal('task', id, bytes)))

export const answerToBytes = (id: string, answer: Answer): Uint8Array => seal('answer', id, toBytes(answer))

/** Throws an `Error` where the bytes are no answer to that task. */
export function answerOf(id: string, task: TaskSent, bytes: Uint8Array): Answer {
  const answer = ofAnswer.parse(fromBytes(unseal('answer', id, bytes)))
  const rows = 'shifts' in answer ? answer.shifts : 'series' in answer ? answer.series : null
  if (rows !== null && (!(task.what in answer) || rows.length !== task.to - task.from + 1))
    throw new Error('it answers another question')
  return answer
}

export const presenceToText = (presence: Presence): string => JSON.stringify(presence)

/** Null where it is none. */
export function presenceOf(text: string): Presence | null {
  try {
    return ofPresence.parse(JSON.parse(text.slice(0, 10_000)))
  } catch {
    return null
  }
}
