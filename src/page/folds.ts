/** All that a page has beside its first screen, folded under the questions that it answers. */
import type { Picture } from '../report/marks/chart.js'
import { empty, html, inLines, type Markup } from '../report/markup.js'
import type { Report, Table } from '../report/report.js'
import { isBehind, type Section, sections } from '../report/sections.js'
import { figureHtml, foldedTable, list, notes, tableHtml } from './parts.js'

/** A part of the page under a heading. */
interface Part {
  id: string
  title: string
  /** What is found in it, in a few words. */
  gist: string
  content: Markup
  /** Is it of use on a screen alone? */
  isScreenOnly?: boolean
}

/** The folds, and what opens them all at once. */
export function foldsHtml(report: Report, pictures: readonly Picture[]): Markup {
  const folds = partsOf(report, pictures).map(
    ({ id, title, gist, content, isScreenOnly }) =>
      html`<details class="fold${isScreenOnly ? ' screen-only' : ''}" id="${id}"><summary><h2>${title}</h2>${gist === '' ? empty : html` <span class="gist">${gist}</span>`}</summary><div class="inside">\n${content}\n</div></details>`,
  )
  return html`<section class="folds" aria-label="More">
<div class="bar"><h2 class="label">Read on</h2><button type="button" id="open-all" hidden aria-expanded="false">Open all</button></div>
${inLines(folds)}
</section>`
}

/** A part of what there is something of; none where there is nothing. */
function part(id: string, title: string, gist: string, ...contents: readonly Markup[]): Part[] {
  const filled = contents.filter((each) => !each.isEmpty)
  return filled.length === 0 ? [] : [{ id, title, gist, content: inLines(filled) }]
}

/** All parts that this report has something for, in their order. */
function partsOf(report: Report, pictures: readonly Picture[]): Part[] {
  const { plan, moment, findings, given, rests, assumed, definitions, checklist } = report
  const table = (each: Table | undefined, heading: string) =>
    each && each.rows.length > 0 ? tableHtml(each, report.display, [heading]) : empty
  return [
    ...subjectParts(report, pictures),
    ...part(
      'plan',
      'What does the line look like?',
      'Plan to scale',
      plan ? html`<div class="plan">${plan}</div>` : empty,
    ),
    ...part(
      'moment',
      'How do cases move along it?',
      moment?.unplayed ? 'Paths of the cases in one shift' : 'Paths of the cases in one shift, and a replay',
      moment
        ? html`<div class="plan moment">${moment.wide}</div><div class="plan moment narrow">${moment.narrow}</div>${moment.unplayed ? notes([moment.unplayed]) : html`<div id="replay"></div>`}`
        : empty,
    ),
    ...part(
      'findings',
      'What does the check find?',
      findings ? findingsGist(findings) : '',
      table(findings, ''),
    ),
    ...part(
      'assumptions',
      'What are the figures based on?',
      'Values given, their evidence, values assumed',
      given?.rows.length ? html`<div class="screen-only">${table(given, '')}</div>` : empty,
      table(rests?.table, ''),
      rests ? html`<p>${rests.exact}</p>` : empty,
      table(assumed, ''),
    ),
    ...part(
      'limits',
      'What is not in the answer?',
      'Limits of the model and of the study',
      list(report.limits),
    ),
    ...part('safety', 'Safety', 'All cautions', html`<div class="cautions">${list(report.cautions)}</div>`),
    ...part(
      'definitions',
      'What does each figure mean?',
      'Every measure with its meaning',
      table(definitions, ''),
    ).map((each) => ({ ...each, isScreenOnly: true })),
    ...part(
      'checklist',
      'Study checklist',
      'What a report on a simulation must tell',
      table(checklist, 'Study checklist'),
    ),
    ...part(
      'repeat',
      'How is it done again?',
      'The command, the seed, the version',
      html`<p><code>${report.repeat}</code></p><p class="origin">Made by ${report.origin}.</p>`,
    ),
  ]
}

const findingsGist = ({ rows }: Table): string =>
  ['error', 'warning', 'note']
    .flatMap((severity) => {
      const count = rows.filter(([first]) => String(first).startsWith(`${severity}:`)).length
      return count > 0 ? [`${count} ${severity}${count === 1 ? '' : 's'}`] : []
    })
    .join(', ')

/** Titles that a gist names. */
const mostTitles = 2

const titlesIn = (tables: readonly Table[]): string => {
  const more = tables.length - mostTitles
  const named = tables.slice(0, mostTitles).map(({ title }) => title)
  return `${named.join('; ')}${more > 0 ? ` and ${more} more` : ''}`
}

/** The sections of tables and charts; what is said in sentences opens the first that has a table. */
function subjectParts(report: Report, pictures: readonly Picture[]): Part[] {
  const { tables, display, question, headline, certainty } = report
  const subjects = Object.entries(sections) as [Section, string][]
  const isOf = ({ rows, section = 'figures' }: Table, key: Section) => section === key && rows.length > 0
  const [first] = subjects.find(([key]) => tables.some(({ section = 'figures' }) => section === key)) ?? []
  return subjects.flatMap(([key, title]) => {
    const charts = pictures.filter(({ chart }) => chart.section === key)
    const opening = key === first ? [question ? list(headline) : empty, notes(certainty)] : []
    const own = tables.filter((each) => isOf(each, key))
    const gist = charts[0]?.chart.title ?? titlesIn(own)
    // the table of what a chart shows stands under the last one that shows some of it
    const under = (picture: Picture) =>
      own.filter((each) => charts.findLast(({ chart }) => isBehind(each, chart.name)) === picture)
    const behind = new Set(charts.flatMap(under))
    return part(
      key,
      title,
      gist,
      ...opening,
      ...charts.map((picture) =>
        inLines([figureHtml(picture), ...under(picture).map((each) => foldedTable(each, display))]),
      ),
      ...own.filter((each) => !behind.has(each)).map((each) => tableHtml(each, display, [])),
    )
  })
}
