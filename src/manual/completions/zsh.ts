/** Completion for zsh. */
import type { CommandText, OptionText, ProgramText } from '../commands.js'
import { brief, type Candidates, ofArgument, ofOption, optionsOf } from './candidates.js'

const action = (candidates: Candidates): string => {
  if (candidates === 'files') return '_files'
  return candidates === 'none' ? ' ' : `(${candidates.join(' ')})`
}

/** What stands after a colon is the next part. */
const said = (text: string) => brief(text).replaceAll(':', '')

const optionSpec = (option: OptionText): string => {
  const value = option.value === undefined ? '' : `:${option.value}:${action(ofOption(option))}`
  return `'*${option.long}[${said(option.meaning)}]${value}'`
}

const commandCase = (command: CommandText, topics: readonly string[]): string[] => [
  `        ${command.name})`,
  '          _arguments \\',
  ...optionsOf(command).map((option) => `            ${optionSpec(option)} \\`),
  ...command.arguments.map(
    (each, index) =>
      `            '${index + 1}:${each.name}:${action(ofArgument(each, topics))}'${index === command.arguments.length - 1 ? '' : ' \\'}`,
  ),
  ...(command.arguments.length === 0 ? ["            '*: :( )'"] : []),
  '          ;;',
]

export const zshScript = ({ name, commands }: ProgramText, topics: readonly string[]): string =>
  [
    `#compdef ${name}`,
    `# Completion for zsh: ${name} completions zsh > _${name}, in a folder of $fpath`,
    `_${name}() {`,
    '  local state',
    '  local -a commands',
    '  commands=(',
    ...commands.map((each) => `    '${each.name}:${said(each.meaning)}'`),
    '  )',
    "  _arguments -C '1: :->command' '*:: :->argument'",
    '  case $state in',
    '    command)',
    "      _describe 'command' commands",
    '      ;;',
    '    argument)',
    '      case $words[1] in',
    ...commands.flatMap((each) => commandCase(each, topics)),
    '      esac',
    '      ;;',
    '  esac',
    '}',
    `compdef _${name} ${name}`,
    '',
  ].join('\n')
