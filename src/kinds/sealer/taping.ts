/** The taping side of a sealer: its heads, and the stops that tape and blades ask for. */

import type { Draw } from '../../engine/draw.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { Cause } from '../../line/states.js'
import type { Unit } from '../../line/unit.js'
import { Head, type HeadFacts, Met } from './head.js'
import { headsOf } from './heads.js'
import type { SealerKeys } from './keys.js'

export class Taping {
  /** First head first, in the direction of travel. */
  readonly heads: readonly Head[]
  private readonly rollChange: Draw
  private readonly rethread: Draw | null
  private readonly bladeService: Draw | null
  private readonly change: SealerKeys['roll-change']['change']
  /** Tape left, m, below which a roll is changed along with another. */
  private readonly alsoBelow: number
  /** Rolls that are low are changed when no case is in the machine. */
  readonly changesWhenIdle: boolean
  /** Heads whose rolls are changed in the stop that runs. */
  private readonly changing: boolean[]
  private stoppedHead = 0

  constructor(
    private readonly floor: Floor,
    label: string,
    keys: SealerKeys,
    private readonly unit: () => Unit,
  ) {
    const { tape, shift } = floor.scenario
    const change = keys['roll-change']
    const facts: HeadFacts = {
      roll: tape.roll,
      cases: floor.cases,
      lostPerRoll: tape['lost-per-roll'],
      warning: change['low-tape-warning'] === 'none' ? null : change['low-tape-warning'],
      noticedAfter: change['noticed-after'],
      bladeAfter: keys.blade?.['service-after'] ?? Infinity,
      breakChance: keys['tape-breaks']?.chance ?? 0,
    }
    const firstRoll = (which: string) =>
      shift['rolls-start'] === 'part-used' ? floor.stream(label, `first roll ${which}`) : null
    this.heads = headsOf(keys)
      .map(([which, { position }]) => ({ which, position }))
      .sort((a, b) => a.position - b.position)
      .map(
        ({ which, position }) =>
          new Head(
            which,
            position,
            facts,
            firstRoll(which),
            floor.stream(label, `tape break ${which}`, facts.breakChance > 0),
          ),
      )
    this.rollChange = floor.draws(label, 'roll change', change.time)
    const breaks = keys['tape-breaks']
    this.rethread = breaks ? floor.draws(label, 'tape break fix', breaks.fix) : null
    this.bladeService = keys.blade ? floor.draws(label, 'blade service', keys.blade.time) : null
    this.change = change.change
    this.alsoBelow = change['also-below'] ?? 0
    this.changesWhenIdle = change.change === 'at-warning-when-idle'
    this.changing = this.heads.map(() => false)
  }

  reset(): void {
    for (const head of this.heads) head.reset()
    this.changing.fill(false)
  }

  /** Counts anew; rolls and blades stay as they are. */
  countAnew(): void {
    for (const head of this.heads) head.countAnew()
  }

  get mayBreakTape(): boolean {
    return this.rethread !== null
  }

  get hasBlade(): boolean {
    return this.bladeService !== null
  }

  /** Whether a case will pass a head with its strip for sure. */
  foresees(index: number, item: CaseIndex): boolean {
    return this.heads[index]!.foresees(item)
  }

  /** A case that was foreseen has passed a head. */
  passed(index: number, item: CaseIndex): void {
    const { cases } = this.floor
    this.heads[index]!.keepPromise(item)
    cases.tape[item]! += cases.strip[item]!
    this.floor.observer?.stripLaid(this.unit().name, this.heads[index]!.name, item, cases.strip[item]!)
  }

  /** A case meets a head: true when it has passed, false when the machine stands for the head. */
  meet(index: number, item: CaseIndex): boolean {
    const { cases } = this.floor
    this.stoppedHead = index
    switch (this.heads[index]!.meet(item)) {
      case Met.taped:
        cases.tape[item]! += cases.strip[item]!
        this.floor.observer?.stripLaid(this.unit().name, this.heads[index]!.name, item, cases.strip[item]!)
        return true
      case Met.unsealed:
        cases.unsealed[item] = 1
        this.floor.observer?.passesUnsealed(this.unit().name, this.heads[index]!.name, item)
        return true
      case Met.needsRoll:
        this.changing[index] = true
        this.changeRolls()
        return false
      case Met.needsBlade:
        this.unit().stop(Cause.blade, this.bladeService!.draw())
        return false
      case Met.tapeBroke:
        this.floor.observer?.tapeBreaks(this.unit().name, this.heads[index]!.name, item)
        this.unit().stop(Cause.tapeBreak, this.rethread!.draw())
        return false
    }
  }

  /** A roll is low. */
  get isLow(): boolean {
    for (let index = 0; index < this.heads.length; index++) if (this.heads[index]!.isLow) return true
    return false
  }

  /** No case is in the machine: rolls that are low are changed now. */
  idle(): void {
    this.changeLowRolls()
  }

  /** A break begins: rolls that are low are changed first where the scenario has it so. */
  breakBegins(): void {
    if (this.change === 'at-break') this.changeLowRolls()
  }

  /** All heads that warn get a new roll, if one of them does. */
  private changeLowRolls(): void {
    for (let index = 0; index < this.heads.length; index++)
      if (this.heads[index]!.isLow) this.changing[index] = true
    if (this.changing.includes(true)) this.changeRolls()
  }

  /** One stop for the rolls that are to be changed, and those that are nearly empty too; the crew does one after the other. */
  private changeRolls(): void {
    let time = 0
    for (let index = 0; index < this.heads.length; index++) {
      if (this.alsoBelow > 0 && this.heads[index]!.left < this.alsoBelow) this.changing[index] = true
      if (this.changing[index]) time += this.rollChange.draw()
    }
    this.unit().stop(Cause.tape, time)
  }

  /** A stop for tape or blade is over. */
  putRight(cause: Cause): void {
    if (cause === Cause.blade) this.heads[this.stoppedHead]!.serviceBlade()
    this.floor.observer?.putRight(this.unit().name, cause, this.heads, this.changing, this.stoppedHead)
    if (cause !== Cause.tape) return
    for (const [index, head] of this.heads.entries()) if (this.changing[index]) head.changeRoll()
    this.changing.fill(false)
  }
}
