/** The crew: people who walk to a piece that stands and put it right, the most urgent task first. */

import { type Actor, never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import { Level } from '../engine/tally.js'
import { unset } from '../engine/unset.js'
import type { Skill } from '../scenario/schema.js'
import type { Floor } from './floor.js'
import { crewMeasures, type Measure } from './measure.js'

/** A stop that needs somebody. Each piece owns one and uses it again, for it has one stop at a time. */
export interface Task {
  /** The piece that stands. */
  readonly place: string
  skill: Skill
  /** Time that the work takes once somebody is there, s; drawn by the piece. */
  duration: number
  /** Somebody has come and begins. */
  begin(): void
  /** The work is done. */
  done(): void
  /** It waits, and all who could come are on a break; told each time that this is seen. */
  waitsOutBreak(): void
}

/** One person. */
class Member implements Actor {
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
    private readonly crew: Crew,
    private readonly floor: Floor,
    readonly label: string,
    readonly does: readonly Skill[],
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
    const { now } = this.floor.clock
    this.isOnBreak = true
    this.breakSince = now
    this.crew.noteAbsence()
  }

  breakEnds(): void {
    const { now } = this.floor.clock
    this.wantsBreak = false
    if (this.isOnBreak) this.breakTime += now - this.breakSince
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

/** Where people of a standing duty are when they are free. */
export interface Post {
  /** Somebody stands there from now, or nobody does. */
  manned(isManned: boolean): void
}

/** People of one name who do the same tasks. */
interface Group {
  name: string
  people: Member[]
  hasOwnBreaks: boolean
  post: Post | null
  /** 1 while somebody stands at the post. */
  duty: Level
}

export class Crew {
  private groups: Group[] = []
  private members: Member[] = []
  private readonly waiting: Task[] = []

  constructor(private readonly floor: Floor) {}

  /** Adds everybody to the clock, in the order of the file; `postOf` finds the piece where a standing duty is. */
  assemble(postOf: (name: string) => Post): void {
    const { crew } = this.floor.scenario
    this.groups = Object.entries(crew).map(([name, keys], group) => {
      return {
        name,
        people: Array.from({ length: keys.people }, (_, index) => {
          const label = keys.people > 1 ? `${name} ${index + 1}` : name
          return new Member(
            this,
            this.floor,
            label,
            keys.does,
            this.floor.draws(`crew.${label}`, 'walk', keys.walk),
            group,
          )
        }),
        hasOwnBreaks: keys.breaks !== undefined,
        post: keys['stands-at'] === undefined ? null : postOf(keys['stands-at']),
        duty: new Level(this.floor.clock),
      }
    })
    this.members = this.groups.flatMap((group) => group.people)
  }

  reset(): void {
    this.waiting.length = 0
    for (const member of this.members) member.reset()
    for (const [index, group] of this.groups.entries()) {
      group.duty.reset(0, this.floor.end)
      this.noteDuty(index)
    }
  }

  /** Counts anew from now; who does what stays. */
  countAnew(): void {
    const { now } = this.floor.clock
    for (const member of this.members) member.countAnew()
    for (const { duty } of this.groups) duty.restart(now, this.floor.end)
  }

  /** Somebody of a group came to its post or left it. */
  noteDuty(index: number): void {
    const { name, post, duty, people } = this.groups[index]!
    if (post === null) return
    const isManned = people.some((member) => member.isFree)
    if (isManned === (duty.value === 1)) return
    duty.change(isManned ? 1 : -1)
    this.floor.observer?.post(name, isManned)
    post.manned(isManned)
  }

  /** Somebody is needed: the first free person who can, or else the task waits. */
  call(task: Task): void {
    for (const member of this.members)
      if (member.isFree && member.does.includes(task.skill)) {
        member.take(task)
        return
      }
    this.waiting.push(task)
    this.noteAbsence()
  }

  /** Tells the tasks that wait while all who could come are on a break. */
  noteAbsence(): void {
    for (let index = 0; index < this.waiting.length; index++) {
      const task = this.waiting[index]!
      if (!this.isAnybodyThere(task.skill)) task.waitsOutBreak()
    }
  }

  private isAnybodyThere(skill: Skill): boolean {
    for (let index = 0; index < this.members.length; index++) {
      const member = this.members[index]!
      if (!member.isOnBreak && member.does.includes(skill)) return true
    }
    return false
  }

  /** Takes the waiting task that stands first in `does`; among equals the one that waits longest. */
  nextTask(does: readonly Skill[]): Task | null {
    let best = -1
    let bestRank = does.length
    for (let index = 0; index < this.waiting.length; index++) {
      const rank = does.indexOf(this.waiting[index]!.skill)
      if (rank >= 0 && rank < bestRank) {
        best = index
        bestRank = rank
      }
    }
    return best < 0 ? null : this.waiting.splice(best, 1)[0]!
  }

  /** A break begins or ends: for the crew `name`, or, for null, for all who have no breaks of their own. */
  turnBreak(begins: boolean, name: string | null): void {
    for (const group of this.groups) {
      const isTheirs = name === null ? !group.hasOwnBreaks : group.name === name
      if (!isTheirs) continue
      for (const member of group.people) begins ? member.breakBegins() : member.breakEnds()
    }
  }

  settle(): void {
    for (const member of this.members) member.settle()
    for (const group of this.groups) group.duty.settle()
  }

  /** Share of the time in which they are there (breaks that they took left out) that each group walks or works, and that its post is manned. */
  measures(): Measure[] {
    return this.groups.flatMap(({ name, people, post, duty }) => {
      const measure = crewMeasures(name)
      const busy = measure(
        'busy',
        () =>
          people.reduce((sum, member) => sum + member.busyTime, 0) /
          people.reduce((sum, member) => sum + this.floor.counted.time - member.breakTime, 0),
      )
      return post === null ? [busy] : [busy, measure('at-post', () => duty.mean())]
    })
  }
}
