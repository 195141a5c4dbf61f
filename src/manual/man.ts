/** The manual page of section 1, in the macros of man(7). */
import { cautions } from '../trade/cautions.js'
import { type CommandText, type OptionText, type ProgramText, usageOf } from './commands.js'
import { parts, type Topic } from './topics.js'

/** Text as roff reads it: no sign of it is a request or an escape. */
const roff = (text: string): string =>
  text
    .replace(/\\/g, '\\e')
    .replace(/-/g, '\\-')
    .replace(/[‘’]/g, "'")
    .replace(/…/g, '...')
    .replace(/^(?=[.'])/gm, '\\&')

const bold = (text: string) => `\\fB${roff(text)}\\fR`
const italic = (text: string) => `\\fI${roff(text)}\\fR`

/** What stands between backticks is bold. */
const prose = (text: string): string =>
  text
    .split(/`([^`]*)`/)
    .map((part, index) => (index % 2 === 1 ? bold(part) : roff(part)))
    .join('')

/** A term and what is said of it. */
const item = (term: string, text: string): string[] => ['.TP', term, prose(text)]

const optionItem = ({ short, long, value, meaning, choices, usual }: OptionText): string[] =>
  item(
    [...(short === undefined ? [] : [bold(short)]), bold(long)].join(', ') +
      (value === undefined ? '' : ` ${italic(value)}`),
    [
      meaning,
      ...(choices ? [` (${choices.join(', ')})`] : []),
      ...(usual === undefined ? [] : [` (default: ${usual})`]),
    ].join(''),
  )

const commandText = (program: string, command: CommandText): string[] => [
  `.SS ${roff(usageOf(program, command))}`,
  prose(command.meaning),
  ...command.arguments.flatMap(({ name, meaning }) => item(italic(name), meaning)),
  ...command.options.flatMap(optionItem),
  ...(command.examples.length > 0
    ? ['.PP', 'Examples:', '.PP', '.nf', ...command.examples.map(roff), '.fi']
    : []),
  ...command.after.flatMap((line) => ['.PP', prose(line)]),
]

/** The page. */
export function manPage(program: ProgramText, topics: readonly Topic[]): string {
  const { name, version, meaning, options, commands, exits, files } = program
  const lines = [
    `.TH ${name.toUpperCase()} 1 "" "${name} ${version}" "User Commands"`,
    '.SH NAME',
    `${name} \\- ${roff(meaning.replace(/\.$/, '').replace(/^[A-Z]/, (letter) => letter.toLowerCase()))}`,
    '.SH SYNOPSIS',
    ...commands.flatMap((command, index) => [...(index === 0 ? [] : ['.br']), bold(usageOf(name, command))]),
    '.SH OPTIONS',
    ...options.flatMap(optionItem),
    '.SH COMMANDS',
    ...commands.flatMap((command) => commandText(name, command)),
    '.SH TOPICS',
    prose(
      `The manual itself is in the program: \`${name} help TOPIC\` prints one, \`${name} manual\` writes all as one page.`,
    ),
    ...topics.flatMap((topic) =>
      item(bold(topic.name), `${topic.title} (${parts[topic.part].toLowerCase()})`),
    ),
    '.SH EXIT STATUS',
    ...exits.flatMap(({ code, meaning: what }) => item(bold(String(code)), what)),
    '.SH FILES',
    ...files.flatMap((file) => item(italic(file.name), `${file.meaning} (${file.by})`)),
    '.SH CAUTIONS',
    ...cautions.flatMap((caution) => ['.PP', prose(caution)]),
  ]
  return `${lines.join('\n')}\n`
}
