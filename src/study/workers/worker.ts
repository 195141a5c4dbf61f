/** A thread of the pool: builds the line once, then does the tasks that it is given. */
import { workerData } from 'node:worker_threads'
import { type Brought, bring, Simulator, type Subject, type Task } from '../work.js'

const simulator = new Simulator(workerData as Subject)

export default (task: Task): Brought => bring(simulator, task)
