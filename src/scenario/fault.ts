/** What can go wrong through no fault of the program: one class of error, with closed codes. */
import { printable } from './printable.js'

/**
 * `asked`: what was asked for cannot be understood or answered. `scenario`: the text is no scenario that can be simulated.
 * `record`: a plant's
 * record cannot be used. `standstill`: its line locks up. `unsettled`: its line does not come to its stride. `file`: a file cannot be read or written.
 * `queue`: workers on other machines, or their server, do not answer. `interrupted`: the study was ended before it was done.
 */
export type FaultCode =
  | 'asked'
  | 'scenario'
  | 'record'
  | 'standstill'
  | 'unsettled'
  | 'file'
  | 'queue'
  | 'interrupted'

/** The message says what was found, the rule and the nearest mend. */
export class Fault extends Error {
  constructor(
    readonly code: FaultCode,
    message: string,
  ) {
    super(message)
    this.name = 'Fault'
  }
}

/** Whether `error` is a fault of one of these codes. */
export const isFault = (error: unknown, ...codes: FaultCode[]): error is Fault =>
  error instanceof Fault && codes.includes(error.code)

/** What was asked for, wrong: the message alone, for whoever knows where it was written. */
export const misuse = (message: string): Fault => new Fault('asked', message)

/** Reads what stands at `where`; what is wrong with it is said with the place. Throws `Fault` `asked`. */
export function readAt<T>(where: string, read: () => T): T {
  try {
    return read()
  } catch (error) {
    throw isFault(error, 'asked') ? misuse(`${where}: ${printable(error.message)}`) : error
  }
}
