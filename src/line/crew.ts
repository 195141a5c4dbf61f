/** The crew: people who walk to a piece that stands and put it right, the most urgent task first. */

import { Level } from '../engine/tally.js'
import { type Call, callsOf } from '../scenario/crew-keys.js'
import type { Floor } from './floor.js'
import { crewMeasures, type Measure } from './measure.js'
import { Member } from './member.js'
import type { Helpers, Post, Task } from './task.js'

/** People of one name who do the same tasks. */
interface Group {
  name: string
  people: Member[]
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
        return new Member(this, floor, label, callsOf(name, keys.does), walk, group)
      }),
      hasOwnBreaks: keys.breaks !== undefined,
      post: keys['stands-at'] === undefined ? null : postOf(keys['stands-at']),
      duty: new Level(floor.clock),
    }))
    this.members = this.groups.flatMap((group) => group.people)
    floor.crew = this
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

  private isAnybodyThere(skill: Call): boolean {
    for (let index = 0; index < this.members.length; index++) {
      const member = this.members[index]!
      if (!member.isOnBreak && member.does.includes(skill)) return true
    }
    return false
  }

  /** Takes the waiting task that stands first in `does`; among equals the one that waits longest. */
  nextTask(does: readonly Call[]): Task | null {
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
