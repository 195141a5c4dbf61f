/** Workload by hand: how much of their time the people on the line are wanted. */

/** Work that comes again and again: times a second, time of each, s. */
export interface Task {
  rate: number
  time: number
}

/**
 * Least allowance on timed work for personal time, fatigue and unavoidable delays: 15 %, 9 to 10 min an hour. 29 CFR
 * 525.12(h)(2)(ii), whose legal scope is time studies for special-certificate wages only; here a floor, not a norm.
 */
export const workAllowance = 0.15

/** Load above which people are taken to be overloaded, allowance included. Common practice, no source: 80 to 85 %. */
export const loadLimit = 0.85

/**
 * Load of `people` who share the tasks, as a share of their time: sum of rate x time, walks included, with the allowance on the time measured at normal
 * pace (standard time, textbook formula of work study). Above 1 the work cannot be done. How tasks get in each other's way is left to simulation. Derived.
 */
export const operatorLoad = (tasks: readonly Task[], people: number, allowance = workAllowance): number =>
  tasks.reduce((load, { rate, time }) => load + rate * (time * (1 + allowance)), 0) / people
