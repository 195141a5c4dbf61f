/** `tapeshift help`: topics of the manual, and what it says of a key, a measure or a finding. */
import type { Command } from 'commander'
import { exits, type Io, screenStyle } from './io.js'

/** The guide to the question of each command. */
const guides: Readonly<Record<string, string>> = {
  run: 'first-study',
  check: 'can-it-work',
  compare: 'which-layout',
  size: 'how-many',
  sweep: 'how-much',
  fit: 'from-a-log',
  validate: 'model-and-plant',
  trace: 'one-shift',
  try: 'try-in-a-page',
  worker: 'many-machines',
  report: 'results',
  new: 'scenario-file',
}

/** Adds the command, and to the help of those that were added before where more stands; `finish` takes its exit code. */
export function addHelp(program: Command, io: Io, finish: (code: number) => void): void {
  for (const command of program.commands)
    command.addHelpText('after', `\nMore: tapeshift help ${guides[command.name()]}`)
  program
    .command('help')
    .argument('[TOPIC]', 'a topic, a command, a key, a measure or a finding; none: the list of topics')
    .description('the manual: a topic, or what a key, a measure or a finding means')
    .addHelpText(
      'before',
      `Examples:
  tapeshift help                          the topics
  tapeshift help how-many                 one of them
  tapeshift help line.sealer.jams         keys of a scenario
  tapeshift help throughput               a measure
  tapeshift help legs-meet                a finding of check
`,
    )
    // an option may be asked for too
    .allowUnknownOption()
    .action(async (word: string | undefined) => {
      await told(word, program, io)
      finish(exits.done)
    })
}

async function told(word: string | undefined, program: Command, io: Io): Promise<void> {
  const command = program.commands.find((each) => each.name() === word || each.aliases().includes(word ?? ''))
  if (command) {
    command.outputHelp()
    return
  }
  const [{ manualOfProgram }, { textFor }, { terminalText }] = await Promise.all([
    import('./described.js'),
    import('../manual/look-up.js'),
    import('../manual/terminal.js'),
  ])
  const commands = program.commands.map((each) => each.name())
  io.stdout.write(terminalText(textFor(manualOfProgram(program), word, commands), screenStyle(io)))
}
