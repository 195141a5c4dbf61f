/** The crew: people who walk to a piece that stands and put it right, the most urgent task first. */
import { type Actor, never } from '../engine/clock.js'
import type { Skill } from '../scenario/schema.js'
import type { Draw, Floor } from './floor.js'
import type { Measure } from './measure.js'

/** A stop that needs somebody. Each piece owns one and uses it again, for it has one stop at a time. */
export interface Task {
  skill: Skill
  /** Time that the work takes once somebody is there, s; drawn by the piece. */
  duration: number
  /** Somebody has come and begins. */
  begin(now: number): void
  /** The work is done. */
  done(now: number): void
}

/** One person. */
class Member implements Actor {
  readonly slot: number
  private task: Task | null = null
  private isWalking = false
  private isOnBreak = false
  private wantsBreak = false
  private pending = never
  private busySince = 0
  busyTime = 0

  constructor(
    private readonly crew: Crew,
    private readonly floor: Floor,
    readonly label: string,
    readonly does: readonly Skill[],
    private readonly walk: Draw,
  ) {
    this.slot = floor.clock.add(this)
  }

  reset(): void {
    this.task = null
    this.isWalking = false
    this.isOnBreak = false
    this.wantsBreak = false
    this.busyTime = 0
    this.pending = never
  }

  get isFree(): boolean {
    return this.task === null && !this.isOnBreak
  }

  take(now: number, task: Task): void {
    this.task = task
    this.busySince = now
    this.isWalking = true
    this.schedule(now + this.walk.draw())
  }

  act(now: number): void {
    const task = this.task!
    if (this.isWalking) {
      this.isWalking = false
      this.schedule(now + task.duration)
      task.begin(now)
      return
    }
    this.task = null
    this.busyTime += now - this.busySince
    this.schedule(never)
    if (this.wantsBreak) this.isOnBreak = true
    task.done(now)
    this.lookForWork(now)
  }

  /** A break begins: at once for who is free, after the task in hand for who is not. */
  breakBegins(): void {
    this.wantsBreak = true
    if (this.task === null) this.isOnBreak = true
  }

  breakEnds(now: number): void {
    this.wantsBreak = false
    this.isOnBreak = false
    this.lookForWork(now)
  }

  /** Books the time of a task that the end of the shift cuts off. */
  settle(now: number): void {
    if (this.task) this.busyTime += now - this.busySince
  }

  private lookForWork(now: number): void {
    if (!this.isFree) return
    const task = this.crew.nextTask(this.does)
    if (task) this.take(now, task)
  }

  private schedule(time: number): void {
    this.pending = time
    this.floor.clock.set(this.slot, this.pending)
  }
}

/** People of one name who do the same tasks. */
interface Group {
  name: string
  people: Member[]
}

export class Crew {
  private groups: Group[] = []
  private members: Member[] = []
  private readonly waiting: Task[] = []

  constructor(private readonly floor: Floor) {}

  /** Adds everybody to the clock, in the order of the file. */
  assemble(): void {
    this.groups = Object.entries(this.floor.scenario.crew).map(([name, { people, walk, does }]) => ({
      name,
      people: Array.from({ length: people }, (_, index) => {
        const label = people > 1 ? `${name} ${index + 1}` : name
        return new Member(this, this.floor, label, does, this.floor.draws(`crew.${label}`, 'walk', walk))
      }),
    }))
    this.members = this.groups.flatMap((group) => group.people)
  }

  reset(): void {
    this.waiting.length = 0
    for (const member of this.members) member.reset()
  }

  /** Somebody is needed: the first free person who can, or else the task waits. */
  call(now: number, task: Task): void {
    for (const member of this.members)
      if (member.isFree && member.does.includes(task.skill)) {
        member.take(now, task)
        return
      }
    this.waiting.push(task)
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

  breakBegins(): void {
    for (const member of this.members) member.breakBegins()
  }

  breakEnds(now: number): void {
    for (const member of this.members) member.breakEnds(now)
  }

  settle(now: number): void {
    for (const member of this.members) member.settle(now)
  }

  /** Share of the working time (shift and run-out less breaks) that each group walks or works. */
  measures(workingTime: number): Measure[] {
    return this.groups.map(({ name, people }) => ({
      path: ['crew', name, 'busy'],
      label: `Share of time busy (walking and working), ${name}`,
      unit: 'share',
      kind: 'mean',
      value: () => people.reduce((sum, member) => sum + member.busyTime, 0) / (people.length * workingTime),
    }))
  }
}
