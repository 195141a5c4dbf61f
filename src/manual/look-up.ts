/** What the manual says of a word: a topic, entries of the reference, or what is near where there is neither. */
import { misuse } from '../scenario/fault.js'
import { shown } from '../scenario/printable.js'
import { entryText } from './entry.js'
import { entriesOf, meantBy } from './find.js'
import { plain } from './markdown.js'
import { type Manual, type Part, parts, type Topic } from './topics.js'

/** Longest part of a word that is looked at. */
const longest = 80

/** Topics that are named for a word that stands in their texts alone. */
const mostNamed = 3

/** As Markdown; without a word the list of topics. `commands` may be meant too. Throws `Fault` `asked` where nothing is called so. */
export function textFor(manual: Manual, word: string | undefined, commands: readonly string[]): string {
  if (word === undefined) return listOfTopics(manual)
  const topic = manual.topics.find(({ name }) => name === word)
  if (topic) return topic.text
  const found = entriesOf(manual, word)
  if (found.length === 0) throw misuse(missing(manual, word.slice(0, longest), commands))
  return found
    .flatMap(({ topic: name, entries }) => [
      entries.map(entryText).join('\n'),
      `All of these: \`tapeshift help ${name}\``,
    ])
    .join('\n\n')
}

/** The list of topics, for those who look for one. */
const listOfTopics = ({ topics }: Manual): string =>
  [
    '# Topics of the manual',
    '`tapeshift help TOPIC` prints one. It also takes a command, a key of a scenario such as `line.sealer.jams`, a measure such as `throughput`, or a finding such as `legs-meet`. `tapeshift manual` writes all as one page.',
    ...(Object.entries(parts) as [Part, string][]).flatMap(([part, title]) => [
      `## ${plain(title)}`,
      topics
        .filter((topic) => topic.part === part)
        .map(({ name, title: about }) => `- \`${name}\`: ${plain(about)}`)
        .join('\n'),
    ]),
  ].join('\n\n')

function missing(manual: Manual, word: string, commands: readonly string[]): string {
  const said = `the manual has no \`${shown(word, longest)}\``
  const times = ({ text }: Topic) => text.split(word).length - 1
  const within = manual.topics
    .filter((topic) => topic.part !== 'reference' && times(topic) > 0)
    .sort((one, other) => times(other) - times(one))
  if (word.length > 2 && within.length > 0)
    return `${said} of its own; it is spoken of in ${within
      .slice(0, mostNamed)
      .map(({ name }) => `\`tapeshift help ${name}\``)
      .join(', ')}`
  const meant = meantBy(manual, word, commands)
  return `${said}: ${meant === undefined ? '' : `did you mean \`${meant}\`? `}\`tapeshift help\` lists the topics`
}
