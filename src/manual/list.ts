/** The list of topics, for those who look for one. */
import { plain } from './markdown.js'
import { type Manual, type Part, parts } from './topics.js'

/** As Markdown. */
export const listOfTopics = ({ topics }: Manual): string =>
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
