/** One person of a crew: walks to a task, works, does other work meanwhile, and goes on breaks. */
import { type Actor, never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { unset } from '../engine/unset.js'
import type { Call } from '../scenario/calls.js'
import type { Floor } from './floor.js'
import type { OtherWork } from './other-work.js'
import type { Task } from './task.js'

/** The crew as one of its people sees it. */
interface Colleagues {
  /** Somebody of the group came to its post or left it. */
  noteDuty(group: number): void
  /** Tells the tasks that wait while all who could come are on a break. */
  noteAbsence(): void
  /** The waiting task that is most urgent of what somebody can do, taken out; null where none waits. */
  nextTask(member: Able): Task | null
  /** Other work of a group that waits to be done; null where none does. */
  nextOther(group: number): OtherWork | null
}

/** What somebody can do: tasks by skill, the most urgent first, and what is planned for the crew. */
export interface Able {
  readonly does: readonly Call[]
  readonly crew: string
}

/** How urgent a task is to somebody: 0 the most, planned work of the crew the least; -1: no task of theirs. */
export function rankOf({ skill, planned }: Task, { does, crew }: Able): number {
  if (planned === null) return does.indexOf(skill)
  return planned.crew === crew ? does.length : -1
}

export class Member implements Actor, Able {
  readonly slot: number
  private task: Task | null = null
  private isWalking = false
  /** Other work in hand; since when, s, and how long in all. */
  private other: OtherWork | null = null
  private otherSince = unset
  otherTime = unset
  /** Pieces of other work that were done. */
  othersDone = 0
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
    private readonly colleagues: Colleagues,
    private readonly floor: Floor,
    readonly label: string,
    readonly does: readonly Call[],
    private readonly walk: Draw,
    /** Name of its group, and the number of that. */
    readonly crew: string,
    private readonly group: number,
  ) {
    this.slot = floor.clock.add(this)
  }

  reset(): void {
    this.task = null
    this.isWalking = false
    this.other = null
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
    this.otherTime = this.other ? this.otherSince - now : 0
    this.othersDone = 0
  }

  get isFree(): boolean {
    return this.task === null && this.other === null && !this.isOnBreak && !this.isFinishing
  }

  /** At other work that a stop of the line may call them away from. */
  get canLeave(): boolean {
    return this.other?.canBeLeft === true
  }

  /** How long what is left of the other work in hand takes, s. */
  get otherLeft(): number {
    return this.other === null ? 0 : this.pending - this.floor.clock.now
  }

  take(task: Task): void {
    const { now } = this.floor.clock
    if (this.other !== null) this.leaveOther(this.other)
    this.task = task
    this.busySince = now
    this.isWalking = true
    this.floor.observer?.setsOut(this.label, task)
    this.schedule(now + this.walk.draw())
    this.colleagues.noteDuty(this.group)
  }

  /** Begins with other work, or goes on with it: it needs no walk. */
  takeOther(work: OtherWork): void {
    const rest = work.take()!
    this.other = work
    this.otherSince = this.floor.clock.now
    this.floor.observer?.otherWork('other-work-begins', this.crew, this.label, work.does, rest)
    this.schedule(this.otherSince + rest)
    this.colleagues.noteDuty(this.group)
  }

  /** Leaves the other work in hand, if not all of it is done, for somebody to go on with it later. */
  private leaveOther(work: OtherWork): void {
    const rest = this.otherLeft
    if (rest > 0) {
      work.putBack(rest)
      this.endOther('other-work-left', work, rest)
    } else this.endOther('other-work-done', work)
  }

  private endOther(how: 'other-work-left' | 'other-work-done', { does }: OtherWork, rest?: number): void {
    this.otherTime += this.floor.clock.now - this.otherSince
    if (how === 'other-work-done') this.othersDone++
    this.other = null
    this.schedule(never)
    this.floor.observer?.otherWork(how, this.crew, this.label, does, rest)
  }

  act(): void {
    const { now } = this.floor.clock
    if (this.other !== null) {
      this.endOther('other-work-done', this.other)
      if (this.wantsBreak) this.goOnBreak()
      this.lookForWork()
      this.colleagues.noteDuty(this.group)
      return
    }
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
    this.colleagues.noteDuty(this.group)
  }

  /** A break begins: at once for who is free or at work that can be left, after what is in hand for who is not. */
  breakBegins(): void {
    this.wantsBreak = true
    if (this.other?.canBeLeft) this.leaveOther(this.other)
    if (this.task === null && this.other === null) this.goOnBreak()
    this.colleagues.noteDuty(this.group)
  }

  private goOnBreak(): void {
    this.isOnBreak = true
    this.breakSince = this.floor.clock.now
    this.colleagues.noteAbsence()
  }

  breakEnds(): void {
    this.wantsBreak = false
    if (this.isOnBreak) this.breakTime += this.floor.clock.now - this.breakSince
    this.isOnBreak = false
    this.lookForWork()
    this.colleagues.noteDuty(this.group)
  }

  /** Books the time of a task or of other work that the end of the shift cuts off. */
  settle(): void {
    const { now } = this.floor.clock
    if (this.task) this.busyTime += now - this.busySince
    if (this.isOnBreak) this.breakTime += now - this.breakSince
    if (this.other) this.otherTime += now - this.otherSince
  }

  private lookForWork(): void {
    if (!this.isFree) return
    const task = this.colleagues.nextTask(this)
    const other = task ? null : this.colleagues.nextOther(this.group)
    if (task) this.take(task)
    else if (other) this.takeOther(other)
  }

  private schedule(time: number): void {
    this.pending = time
    this.floor.clock.set(this.slot, this.pending)
  }
}
