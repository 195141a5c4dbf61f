/** A thread of the pool: does the tasks that it is given. */
import { type Brought, bring, Simulator, type Task } from '../work.js'

const simulator = new Simulator()

export default (task: Task): Brought => bring(simulator, task)
