/** A drive over time: how long it has run, and how far what it carries has come, by the speeds at which it was told to carry. */
import { countBefore, within } from './steps.js'

/** From an instant on, s: time run and way gone before it, s and m, and the speed since, m/s. */
interface Course {
  time: number
  run: number
  way: number
  speed: number
}

export class Drive {
  private readonly courses: Course[] = []
  private readonly times: number[]

  /** `steps`: from each instant on the speed, 0 where it stands, in order of time. Before the first it stands. */
  constructor(steps: readonly (readonly [time: number, speed: number])[]) {
    this.times = steps.map(([time]) => time)
    for (const [time, speed] of steps) {
      const last = this.courses.at(-1)
      const passed = last && last.speed > 0 ? time - last.time : 0
      const way = last ? last.way + passed * last.speed : 0
      this.courses.push({ time, run: (last?.run ?? 0) + passed, way, speed })
    }
  }

  private courseAt(time: number): Course | undefined {
    const { courses } = this
    return courses[countBefore(courses.length, (place) => courses[place]!.time <= time) - 1]
  }

  /** Speed from `time` on, m/s. */
  speedAt(time: number): number {
    return this.courseAt(time)?.speed ?? 0
  }

  /** Time run at `time`, s. */
  runAt(time: number): number {
    const course = this.courseAt(time)
    return course ? course.run + (course.speed > 0 ? time - course.time : 0) : 0
  }

  /** Way gone at `time`, m. */
  wayAt(time: number): number {
    const course = this.courseAt(time)
    return course ? course.way + course.speed * (time - course.time) : 0
  }

  /** The first instant at which it has run `run` seconds; infinite where it never does. */
  whenRun(run: number): number {
    return this.when(run, ({ run: before, time }) => ({ before, time, pace: 1 }))
  }

  /** The first instant at which it has gone `way` metres; infinite where it never does. */
  whenGone(way: number): number {
    return this.when(way, ({ way: before, time, speed }) => ({ before, time, pace: speed }))
  }

  private when(
    wanted: number,
    of: (course: Course) => { before: number; time: number; pace: number },
  ): number {
    const { courses } = this
    const count = countBefore(courses.length, (place) => of(courses[place]!).before < wanted)
    if (count === 0) return wanted > 0 ? Infinity : (courses[0]?.time ?? Infinity)
    const last = courses[count - 1]!
    const { before, time, pace } = of(last)
    return last.speed > 0 ? time + (wanted - before) / pace : (courses[count]?.time ?? Infinity)
  }

  /** Instants in (from, to) at which its speed changes, in order. */
  turns(from: number, to: number): number[] {
    return within(this.times, from, to)
  }
}
