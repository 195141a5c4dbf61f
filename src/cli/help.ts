/** `tapeshift help`: topics of the manual, and what it says of a key, a measure or a finding. */
import type { Command } from 'commander'
import { misuse } from '../scenario/fault.js'
import { printable } from '../scenario/printable.js'
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
  report: 'results',
  new: 'scenario-file',
}

/** Adds the command; `finish` takes its exit code. */
export function addHelp(program: Command, io: Io, finish: (code: number) => void): void {
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
  const command = program.commands.find((each) => each.name() === word)
  if (command) {
    command.outputHelp()
    const guide = guides[command.name()]
    if (guide !== undefined) io.stdout.write(`\nMore: tapeshift help ${guide}\n`)
    return
  }
  const [{ manualOfProgram }, { entriesOf, meantBy }, { entryText }, { terminalText }, { listOfTopics }] =
    await Promise.all([
      import('./manual-of.js'),
      import('../manual/find.js'),
      import('../manual/entry.js'),
      import('../manual/terminal.js'),
      import('../manual/list.js'),
    ])
  const manual = manualOfProgram(program)
  const print = (text: string) => io.stdout.write(terminalText(text, screenStyle(io)))
  if (word === undefined) {
    print(listOfTopics(manual))
    return
  }
  const topic = manual.topics.find(({ name }) => name === word)
  if (topic) {
    print(topic.text)
    return
  }
  const found = entriesOf(manual, word)
  if (found.length === 0) {
    const meant = meantBy(
      manual,
      word.slice(0, 80),
      program.commands.map((each) => each.name()),
    )
    throw misuse(
      `the manual has no \`${printable(word.slice(0, 80))}\`${meant === undefined ? '' : `: did you mean \`${meant}\`?`} \`tapeshift help\` lists the topics`,
    )
  }
  print(
    found
      .flatMap(({ topic: name, entries }) => [
        entries.map(entryText).join('\n'),
        `All of these: \`tapeshift help ${name}\``,
      ])
      .join('\n\n'),
  )
}
