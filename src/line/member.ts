/** One person of a crew: walks to a task, works, and goes on breaks. */
import { type Actor, never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import type { Call } from '../scenario/crew-keys.js'
import type { Floor } from './floor.js'
import type { Task } from './task.js'

/** The crew as one of its people sees it. */
interface Colleagues {
  /** Somebody of the group came to its post or left it. */
  noteDuty(group: number): void
  /** Tells the tasks that wait while all who could come are on a break. */
  noteAbsence(): void
  /** The waiting task that is most urgent of what somebody `does`, taken out; null where none waits. */
  nextTask(does: readonly Call[]): Task | null
}

export class Member implements Actor {
  readonly slot: number
  private task: Task | null = null
  private isWalking = false
  isOnBreak = false
  private wantsBreak = false
  private pending = never
  private busySince = unset
  busyTime = unset
  /** Time away on breaks, s. */
  breakTime = unset
  private breakSince = unset
  /** A task ends: what that sets off waits its turn among the tasks that wait already. */
  private isFinishing = false

  constructor(
    private readonly crew: Colleagues,
    private readonly floor: Floor,
    readonly label: string,
    readonly does: readonly Call[],
    private readonly walk: Draw,
    /** Number of its group. */
    private readonly group: number,
  ) {
    this.slot = floor.clock.add(this)
  }

  reset(): void {
    this.task = null
    this.isWalking = false
    this.isOnBreak = false
    this.wantsBreak = false
    this.isFinishing = false
    this.pending = never
    this.countAnew()
  }

  /** Counts anew from now: what lies before it of a task or a break in hand is taken off now, and booked with the rest. */
  countAnew(): void {
    const { now } = this.floor.clock
    this.busyTime = this.task ? this.busySince - now : 0
    this.breakTime = this.isOnBreak ? this.breakSince - now : 0
  }

  get isFree(): boolean {
    return this.task === null && !this.isOnBreak && !this.isFinishing
  }

  take(task: Task): void {
    const { now } = this.floor.clock
    this.task = task
    this.busySince = now
    this.isWalking = true
    this.floor.observer?.setsOut(this.label, task)
    this.schedule(now + this.walk.draw())
    this.crew.noteDuty(this.group)
  }

  act(): void {
    const { now } = this.floor.clock
    const task = this.task!
    if (this.isWalking) {
      this.isWalking = false
      this.schedule(now + task.duration)
      this.floor.observer?.workBegins(this.label, task)
      task.begin()
      return
    }
    this.task = null
    this.busyTime += now - this.busySince
    this.schedule(never)
    if (this.wantsBreak) this.goOnBreak()
    this.floor.observer?.workDone(this.label, task)
    this.isFinishing = true
    task.done()
    this.isFinishing = false
    this.lookForWork()
    this.crew.noteDuty(this.group)
  }

  /** A break begins: at once for who is free, after the task in hand for who is not. */
  breakBegins(): void {
    this.wantsBreak = true
    if (this.task === null) this.goOnBreak()
    this.crew.noteDuty(this.group)
  }

  private goOnBreak(): void {
    this.isOnBreak = true
    this.breakSince = this.floor.clock.now
    this.crew.noteAbsence()
  }

  breakEnds(): void {
    this.wantsBreak = false
    if (this.isOnBreak) this.breakTime += this.floor.clock.now - this.breakSince
    this.isOnBreak = false
    this.lookForWork()
    this.crew.noteDuty(this.group)
  }

  /** Books the time of a task that the end of the shift cuts off. */
  settle(): void {
    const { now } = this.floor.clock
    if (this.task) this.busyTime += now - this.busySince
    if (this.isOnBreak) this.breakTime += now - this.breakSince
  }

  private lookForWork(): void {
    if (!this.isFree) return
    const task = this.crew.nextTask(this.does)
    if (task) this.take(task)
  }

  private schedule(time: number): void {
    this.pending = time
    this.floor.clock.set(this.slot, this.pending)
  }
}
