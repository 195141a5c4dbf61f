/** Completion for fish. */
import type { CommandText, ProgramText } from '../commands.js'
import { brief, type Candidates, ofArgument, ofOption, optionsOf } from './candidates.js'

const quoted = (text: string) => `'${text}'`

const taking = (candidates: Candidates): string => {
  if (candidates === 'files') return '-F'
  return candidates === 'none' ? '' : `-a ${quoted(candidates.join(' '))}`
}

function commandLines(name: string, command: CommandText, topics: readonly string[]): string[] {
  const here = `complete -c ${name} -n ${quoted(`__fish_seen_subcommand_from ${command.name}`)}`
  return [
    `complete -c ${name} -n __fish_use_subcommand -a ${command.name} -d ${quoted(brief(command.meaning))}`,
    ...command.arguments.map((each) => `${here} ${taking(ofArgument(each, topics))}`.trimEnd()),
    ...optionsOf(command).map((option) =>
      [
        here,
        `-l ${option.long.slice(2)}`,
        ...(option.value === undefined ? [] : ['-r', taking(ofOption(option))]),
        `-d ${quoted(brief(option.meaning))}`,
      ]
        .filter(Boolean)
        .join(' '),
    ),
  ]
}

export const fishScript = ({ name, commands }: ProgramText, topics: readonly string[]): string =>
  [
    `# Completion for fish: ${name} completions fish > ~/.config/fish/completions/${name}.fish`,
    `complete -c ${name} -f`,
    ...commands.flatMap((each) => commandLines(name, each, topics)),
    '',
  ].join('\n')
