/** What the program says of its commands, as data, and the reference that is made of it. */
import type { Entry, Reference } from './entry.js'

/** An option of a command. */
export interface OptionText {
  /** Such as `--out`. */
  long: string
  /** Such as `-V`; absent where there is none. */
  short?: string
  /** What its value is called; absent of a flag. */
  value?: string
  meaning: string
  /** Words that it takes; absent where it takes any. */
  choices?: readonly string[]
  /** What holds when it is not given, in words; absent where nothing is said. */
  usual?: string
}

/** What is given to a command by its place. */
export interface ArgumentText {
  /** In capitals. */
  name: string
  meaning: string
  isOptional: boolean
  choices?: readonly string[]
}

/** A command. */
export interface CommandText {
  name: string
  meaning: string
  arguments: readonly ArgumentText[]
  options: readonly OptionText[]
  /** Lines of examples, and what is said after the options; empty where nothing is. */
  examples: readonly string[]
  after: readonly string[]
}

/** The whole program. */
export interface ProgramText {
  name: string
  version: string
  meaning: string
  options: readonly OptionText[]
  commands: readonly CommandText[]
  exits: readonly { code: number; meaning: string }[]
  files: readonly { name: string; by: string; meaning: string }[]
}

/** How a command is called. */
export const usageOf = (program: string, { name, arguments: given, options }: CommandText): string =>
  [
    program,
    name,
    ...given.map((each) => (each.isOptional ? `[${each.name}]` : each.name)),
    ...(options.length > 0 ? ['[options]'] : []),
  ].join(' ')

const optionName = ({ long, value }: OptionText) => (value === undefined ? long : `${long} ${value}`)

const optionEntry = (command: string, option: OptionText): Entry => ({
  name: optionName(option),
  of: command,
  says: [
    option.meaning,
    ...(option.choices ? [`one of ${option.choices.map((each) => `\`${each}\``).join(', ')}`] : []),
    ...(option.usual === undefined ? [] : [`Default: ${option.usual}`]),
  ],
})

/** Commands with their options: those that mean the same for several commands once. */
export function commandsReference({ name, commands, options }: ProgramText): Reference {
  const commandsOf = new Map<string, string[]>()
  for (const command of commands)
    for (const option of command.options) {
      const text = JSON.stringify(option)
      commandsOf.set(text, [...(commandsOf.get(text) ?? []), command.name])
    }
  const isShared = (option: OptionText) => commandsOf.get(JSON.stringify(option))!.length > 1
  const shared = [...commandsOf].filter(([, of]) => of.length > 1)
  return {
    name: 'commands',
    title: 'Commands and options',
    intro: `Each with what it takes. \`${name} help COMMAND\` has examples.`,
    groups: [
      ...commands.map((command) => ({
        title: usageOf(name, command),
        note: `${command.meaning}.`,
        entries: [
          ...command.arguments.map((each) => ({ name: each.name, of: command.name, says: [each.meaning] })),
          ...command.options
            .filter((option) => !isShared(option))
            .map((option) => optionEntry(command.name, option)),
        ],
      })),
      {
        title: 'Options of several commands',
        entries: shared.map(([text, of]) => optionEntry(of.join(', '), JSON.parse(text))),
      },
      { title: 'Options of the program', entries: options.map((each) => optionEntry(name, each)) },
    ],
  }
}

export const exitsReference = ({ exits }: ProgramText): Reference => ({
  name: 'exit-codes',
  title: 'Exit codes',
  intro: 'How a command ends, for scripts.',
  groups: [
    {
      title: 'Codes',
      entries: exits.map(({ code, meaning }) => ({ name: String(code), says: [meaning] })),
    },
  ],
})

export const filesReference = ({ files }: ProgramText): Reference => ({
  name: 'files',
  title: 'Files that are written',
  intro:
    'Each command writes into a folder of its own, `out/SCENARIO-COMMAND` unless `--out` names another. The same file, seed and version give the same bytes, on any number of workers.',
  groups: [
    {
      title: 'Files',
      entries: files.map(({ name, by, meaning }) => ({ name, of: by, says: [meaning] })),
    },
  ],
})
