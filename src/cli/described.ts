/** What commander knows of the program, as data for the manual, the manual page and completions; and the manual, whose written topics lie beside the program. */
import { existsSync, readFileSync } from 'node:fs'
import { brotliDecompressSync } from 'node:zlib'
import type { Command } from 'commander'
import type { CommandText, OptionText, ProgramText } from '../manual/commands.js'
import { type Manual, manualOf, type Written } from '../manual/topics.js'
import { version } from '../version.js'
import { exits, exitWords } from './io.js'
import { writtenFiles } from './written.js'

/** The program as data. */
export const described = (program: Command): ProgramText => ({
  name: program.name(),
  version,
  meaning: program.description(),
  options: optionsOf(program),
  commands: program.commands.map(commandOf),
  exits: Object.entries(exits).map(([name, code]) => ({
    code,
    meaning: exitWords[name as keyof typeof exits],
  })),
  files: Object.entries(writtenFiles).map(([name, { by, meaning }]) => ({ name, by, meaning })),
})

const commandOf = (command: Command): CommandText => ({
  name: command.name(),
  meaning: command.description(),
  arguments: command.registeredArguments.map((each) => ({
    name: each.name().replace(/[<>]/g, ''),
    meaning: each.description,
    isOptional: !each.required,
    ...(each.argChoices ? { choices: each.argChoices } : {}),
  })),
  options: optionsOf(command),
  ...saidAround(command),
})

const optionsOf = (command: Command): OptionText[] =>
  command.options
    .filter(({ hidden, long }) => !hidden && long)
    .map(({ long, short, flags, description, argChoices, defaultValue, defaultValueDescription }) => {
      const [, value] = /[<[]([^\]>]+)[\]>]/.exec(flags) ?? []
      const given = defaultValueDescription ?? (typeof defaultValue === 'string' ? defaultValue : undefined)
      const usual = given === 'none' || description.includes('(default') ? undefined : given
      return {
        long: long!,
        meaning: description,
        ...(short ? { short } : {}),
        ...(value === undefined ? {} : { value }),
        ...(argChoices ? { choices: argChoices } : {}),
        ...(usual === undefined ? {} : { usual }),
      }
    })

/** Lines that the help of a command has before and after its own. */
function saidAround(command: Command): Pick<CommandText, 'examples' | 'after'> {
  const { writeOut } = command.configureOutput()
  let text = ''
  command.configureOutput({
    writeOut(part) {
      text += part
    },
  })
  command.outputHelp()
  command.configureOutput(writeOut === undefined ? {} : { writeOut })
  const [examples, after] = text
    .split(command.helpInformation())
    .map((part) => part.split('\n').filter((line) => line.trim() !== ''))
  return { examples: examples!.filter((line) => line !== 'Examples:'), after: after ?? [] }
}

/** Beside the bundled program, texts by their names; of one that is run from its sources, where they are written. */
const packed = new URL('./manual.json.br', import.meta.url)
const texts = new URL('../manual/texts/', import.meta.url)

/** All topics. */
export function manualOfProgram(program: Command): Manual {
  const all = existsSync(packed)
    ? (JSON.parse(brotliDecompressSync(readFileSync(packed)).toString()) as Record<Written, string>)
    : null
  return manualOf((name) => all?.[name] ?? writtenTopic(name), described(program))
}

function writtenTopic(name: Written): string {
  const file = new URL(`${name}.md`, texts)
  if (existsSync(file)) return readFileSync(file, 'utf8')
  throw new Error(`${name}.md, a topic of the manual, is not beside the program: build it again`)
}
