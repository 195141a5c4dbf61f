/** `tapeshift run`: how does this line do over many shifts? */
import type { Command } from 'commander'
import type { Io } from './io.js'
import { addStudyOptions, type StudyOptions } from './options.js'
import { withWorkers } from './with-workers.js'

/** Adds the command; `finish` takes its exit code. */
export function addRun(program: Command, io: Io, finish: (code: number) => void): void {
  const command = program
    .command('run')
    .argument('<SCENARIO>', 'scenario file, or - for standard input')
    .description(
      'simulate many shifts: output, queues, stops, tape and cost with intervals, and a verdict on the target',
    )
    .addHelpText(
      'before',
      `Examples:
  tapeshift run line.yaml
  tapeshift run line.yaml --shifts 500 --set "line.sealer.belt-speed=22 m/min"
  tapeshift run line.yaml --precision "0.5 %" --of throughput --of cost-per-1000
  tapeshift run line.yaml --require "target-held >= 95 %"      exit code 4 unless it is shown
  tapeshift run line.yaml --resume                             go on after an interrupt
  tapeshift run line.yaml --json --no-files > result.json
`,
    )
    .addHelpText(
      'after',
      '\nExit codes: 0 done; 3 check calls the line an error, which heads the answer (--anyway: as if it did not); 4 a requirement is not met. 3 goes before 4.',
    )
  addStudyOptions(command).action(async (name: string, options: StudyOptions) => {
    const { workers: most, shifts = most } = options
    const code = await withWorkers(Math.min(most, shifts), async (workers) => {
      const { run } = await import('./run-study.js')
      return run(name, options, io, workers)
    })
    finish(code)
  })
}
