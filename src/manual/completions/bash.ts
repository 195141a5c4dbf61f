/** Completion for bash. */
import type { CommandText, ProgramText } from '../commands.js'
import { type Candidates, ofArgument, ofOption, optionsOf } from './candidates.js'

const reply = (candidates: Candidates): string => {
  if (candidates === 'files')
    return `compopt -o filenames 2>/dev/null; local IFS=$'\\n'; COMPREPLY=($(compgen -f -- "$word"))`
  if (candidates === 'none') return 'COMPREPLY=()'
  return `COMPREPLY=($(compgen -W "${candidates.join(' ')}" -- "$word"))`
}

function commandCase(command: CommandText, topics: readonly string[]): string[] {
  const [first] = command.arguments
  const values = command.options.filter(({ value }) => value !== undefined)
  return [
    `    ${command.name})`,
    '      case "$before" in',
    ...values.map((option) => `        ${option.long}) ${reply(ofOption(option))}; return ;;`),
    '      esac',
    '      if [[ $word == -* ]]; then',
    `        ${reply(optionsOf(command).map(({ long }) => long))}`,
    '      else',
    `        ${reply(first ? ofArgument(first, topics) : 'none')}`,
    '      fi',
    '      ;;',
  ]
}

export const bashScript = ({ name, commands, options }: ProgramText, topics: readonly string[]): string =>
  [
    `# Completion for bash: source <(${name} completions bash)`,
    `_${name}() {`,
    `  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}`,
    '  if [ "$COMP_CWORD" -eq 1 ]; then',
    `    ${reply([...commands.map((each) => each.name), ...options.map(({ long }) => long)])}`,
    '    return',
    '  fi',
    `  case "\${COMP_WORDS[1]}" in`,
    ...commands.flatMap((each) => commandCase(each, topics)),
    '  esac',
    '}',
    `complete -F _${name} ${name}`,
    '',
  ].join('\n')
