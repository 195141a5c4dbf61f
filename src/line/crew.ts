/** The crew: people who walk to a piece that stands and put it right, the most urgent task first, and do other work meanwhile. */

import { Level } from '../engine/tally.js'
import { callsOf } from '../scenario/calls.js'
import { otherWorkOf } from '../scenario/other-work.js'
import type { Floor } from './floor.js'
import { crewMeasures, type Measure } from './measure.js'
import { type Able, Member, rankOf } from './member.js'
import { OtherWork } from './other-work.js'
import type { Helpers, Post, Task } from './task.js'

/** People of one name who do the same tasks. */
interface Group {
  name: string
  people: Member[]
  others: OtherWork[]
  hasOwnBreaks: boolean
  post: Post | null
  /** 1 while somebody stands at the post. */
  duty: Level
}

export class Crew implements Helpers {
  private readonly groups: readonly Group[]
  private readonly members: readonly Member[]
  private readonly waiting: Task[] = []

  /** Adds everybody to the clock, in the order of the file; `postOf` finds the piece where a standing duty is. */
  constructor(
    private readonly floor: Floor,
    postOf: (name: string) => Post,
  ) {
    const { crew } = floor.scenario
    this.groups = Object.entries(crew).map(([name, keys], group) => ({
      name,
      people: Array.from({ length: keys.people }, (_, index) => {
        const label = keys.people > 1 ? `${name} ${index + 1}` : name
        const walk = floor.draws(`crew.${label}`, 'walk', keys.walk)
        return new Member(this, floor, label, callsOf(name, keys.does), walk, name, group)
      }),
      others: [],
      hasOwnBreaks: keys.breaks !== undefined,
      post: keys['stands-at'] === undefined ? null : postOf(keys['stands-at']),
      duty: new Level(floor.clock),
    }))
    this.members = this.groups.flatMap((group) => group.people)
    floor.crew = this
  }

  /**
   * Adds other work to the clock, if there is any: after all people and the calendar, so that who is done when more is due is free for it,
   * and nobody begins with it at the instant at which their break begins.
   */
  join(): void {
    for (const group of this.groups)
      group.others = otherWorkOf(this.floor.scenario.crew[group.name]!).map(
        (kind, index) =>
          new OtherWork(this.floor, group.name, index + 1, kind, (work) => this.due(work, group)),
      )
  }

  reset(): void {
    this.waiting.length = 0
    for (const member of this.members) member.reset()
    for (const [index, group] of this.groups.entries()) {
      for (const work of group.others) work.reset()
      group.duty.reset(0, this.floor.end)
      this.noteDuty(index)
    }
  }

  /** Counts anew from now; who does what stays. */
  countAnew(): void {
    for (const member of this.members) member.countAnew()
    for (const { duty } of this.groups) duty.restart(this.floor.clock.now, this.floor.end)
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

  /** Somebody is needed: the first free person who can, or else the first who can leave other work for it; or the task waits. */
  call(task: Task): void {
    const member = this.firstFor(task, false) ?? this.firstFor(task, true)
    if (member) {
      member.take(task)
      return
    }
    this.waiting.push(task)
    this.noteAbsence()
  }

  private firstFor(task: Task, isAtOtherWork: boolean): Member | null {
    for (const member of this.members)
      if ((isAtOtherWork ? member.canLeave : member.isFree) && rankOf(task, member) >= 0) return member
    return null
  }

  /** Other work of a group is due: the first of it who is free begins, or else it waits. */
  private due(work: OtherWork, { people }: Group): void {
    people.find((member) => member.isFree)?.takeOther(work)
  }

  nextOther(group: number): OtherWork | null {
    return this.groups[group]!.others.find((work) => work.isWaiting) ?? null
  }

  /** Tells the tasks that wait while all who could come are on a break. */
  noteAbsence(): void {
    for (let index = 0; index < this.waiting.length; index++) {
      const task = this.waiting[index]!
      if (!this.isAnybodyThere(task)) task.waitsOutBreak()
    }
  }

  private isAnybodyThere(task: Task): boolean {
    for (let index = 0; index < this.members.length; index++) {
      const member = this.members[index]!
      if (!member.isOnBreak && rankOf(task, member) >= 0) return true
    }
    return false
  }

  /** Takes the waiting task that is most urgent to somebody; among equals the one that waits longest. */
  nextTask(member: Able): Task | null {
    let best = -1
    let bestRank = member.does.length + 1
    for (let index = 0; index < this.waiting.length; index++) {
      const rank = rankOf(this.waiting[index]!, member)
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
      for (const work of group.others) work.turnBreak(begins)
      for (const member of group.people) begins ? member.breakBegins() : member.breakEnds()
    }
  }

  settle(): void {
    for (const member of this.members) member.settle()
    for (const group of this.groups) group.duty.settle()
  }

  /**
   * Share of the time in which they are there (breaks that they took left out) that each group walks or works for the line, and that it
   * does other work; what of that is left at the end; and the share in which its post is manned.
   */
  measures(): Measure[] {
    return this.groups.flatMap(({ name, people, others, post, duty }) => {
      const measure = crewMeasures(name)
      const sum = (of: (member: Member) => number) => people.reduce((total, member) => total + of(member), 0)
      const there = () => sum((member) => this.floor.counted.time - member.breakTime)
      const measures = [measure('busy', () => sum((member) => member.busyTime) / there())]
      if (others.length > 0)
        measures.push(
          measure('other-work', () => sum((member) => member.otherTime) / there()),
          measure('other-work-done', () => sum((member) => member.othersDone)),
          measure(
            'other-work-left',
            () => others.reduce((total, work) => total + work.waits, 0) + sum((member) => member.otherLeft),
          ),
        )
      if (post !== null) measures.push(measure('at-post', () => duty.mean()))
      return measures
    })
  }
}
