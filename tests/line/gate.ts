/** A line of real equipment that ends at a gate which opens and shuts at given times and logs what passes. */
import type { Actor } from '../../src/engine/clock.js'
import { never } from '../../src/engine/clock.js'
import { makeEquipment } from '../../src/kinds/models.js'
import { Crew } from '../../src/line/crew.js'
import type { Equipment } from '../../src/line/equipment.js'
import { Floor } from '../../src/line/floor.js'
import type { Feeder, Taker } from '../../src/line/handshake.js'
import type { Tail } from '../../src/line/tail.js'
import { loadScenario } from '../../src/scenario/load.js'

export type Log = [time: number, what: string][]

class Gate implements Taker, Actor {
  readonly label = 'gate'
  readonly takesWhole = true
  private readonly refused: Feeder[] = []
  private isOpen = true
  private slot = -1
  private next = 0

  constructor(
    private readonly floor: Floor,
    private readonly log: Log,
    /** Times at which it shuts, opens, shuts … */
    private readonly turns: readonly number[],
  ) {}

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  start(): void {
    this.floor.clock.set(this.slot, this.turns[0] ?? never)
  }

  offer(item: number, from: Feeder): boolean {
    if (!this.isOpen) {
      this.refused.push(from)
      return false
    }
    this.log.push([this.floor.clock.now, `case ${this.floor.cases.kind[item]} out`])
    return true
  }

  follow(tail: Tail): void {
    tail.through()
  }

  hold(): void {}

  addRoom(): void {}

  isShut(): boolean {
    return !this.isOpen
  }

  act(): void {
    this.isOpen = !this.isOpen
    this.next++
    this.floor.clock.set(this.slot, this.turns[this.next] ?? never)
    if (this.isOpen) this.refused.shift()?.roomAhead()
  }
}

/** Brings cases at given times and offers each again when it is told of room. */
class Script implements Actor, Feeder {
  readonly label = 'script'
  readonly carries = false
  private slot = -1
  private readonly standing: number[] = []
  private next = 0

  constructor(
    private readonly floor: Floor,
    private readonly log: Log,
    private readonly first: Equipment,
    private readonly plan: readonly [time: number, kind: number][],
  ) {}

  join(): void {
    this.slot = this.floor.clock.add(this)
  }

  start(): void {
    this.floor.clock.set(this.slot, this.plan[0]?.[0] ?? never)
  }

  act(): void {
    this.standing.push(this.floor.cases.create(this.plan[this.next]![1]))
    this.next++
    this.floor.clock.set(this.slot, this.plan[this.next]?.[0] ?? never)
    this.roomAhead()
  }

  tailMoves(): void {}

  roomAhead(): void {
    while (this.standing.length > 0) {
      const item = this.standing[0]!
      if (!this.first.offer(item, this)) return
      this.log.push([this.floor.clock.now, `case ${this.floor.cases.kind[item]} in`])
      this.standing.shift()
    }
  }
}

export interface Trial {
  log: Log
  equipment: Equipment[]
  floor: Floor
}

/**
 * Runs the `line:` of a scenario whose cases are named by `cases`, with cases coming at `arrivals` ([time, kind]) and a
 * gate at its end. Times in the log are rounded to a microsecond.
 */
export function trial(options: {
  line: string
  cases?: string
  rest?: string
  arrivals: [number, number][]
  turns?: number[]
  until?: number
  seed?: string
}): Trial {
  const cases = options.cases ?? '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}'
  const { scenario } = loadScenario(
    `cases: ${cases}\narrivals: {script: {time-between: 1000 h}}\nline: ${options.line}\nshift: {length: ${options.until ?? 1000} s}\n${options.rest ?? ''}`,
  )
  const floor = new Floor(scenario)
  const log: Log = []
  const equipment = Object.entries(scenario.line).map(([name, keys]) => makeEquipment(floor, name, keys))
  const gate = new Gate(floor, log, options.turns ?? [])
  const script = new Script(floor, log, equipment[0]!, options.arrivals)
  for (const [index, piece] of equipment.entries()) piece.next = equipment[index + 1] ?? gate
  for (const actor of [gate, ...[...equipment].reverse(), script]) actor.join()
  const crew = new Crew(floor, (name) => equipment.find((piece) => piece.name === name)!)
  floor.begin(options.seed ?? 'trial', 1)
  for (const piece of equipment) piece.reset()
  crew.reset()
  gate.start()
  script.start()
  floor.clock.run(floor.end)
  for (const piece of equipment) piece.settle()
  return { log: log.map(([time, what]) => [Math.round(time * 1e6) / 1e6, what]), equipment, floor }
}
