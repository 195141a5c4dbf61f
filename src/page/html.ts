/** The report as one page that needs nothing else: pictures, style, result document and the script that draws it are inside. */
import type { Picture } from '../report/marks/chart.js'
import { empty, html, inLines, type Markup, markup } from '../report/markup.js'
import type { Report, Table } from '../report/report.js'
import { type Section, sections } from '../report/sections.js'
import { policyHash } from './base64.js'
import { figureHtml, list, notes, paragraphs, prose, tableHtml } from './parts.js'
import { style } from './style.js'

export type { Picture } from '../report/marks/chart.js'

/** What is inside the page beside the report; without a script it shows pictures only. */
export interface PageContents {
  /** The result document. */
  document?: unknown
  /** A program for browsers that draws what the document holds. */
  script?: string
}

/** A part of the page under a heading. */
interface Part {
  id: string
  title: string
  content: Markup
}

/** The page of a report with its charts, in the order of the sections. */
export function reportPage(
  report: Report,
  pictures: readonly Picture[],
  { document, script = '' }: PageContents = {},
): string {
  const parts = partsOf(report, pictures)
  const data = document === undefined ? '' : dataBlock(document)
  // a script may not hold what ends it
  const program = script.replace(/<(?=\/script|!--)/gi, '\\x3c')
  const contents = [{ id: 'answer', title: 'The answer' }, ...parts].map(
    ({ id, title }) => html`<li><a href="#${id}">${title}</a></li>`,
  )
  const sectionsHtml = parts.map(
    ({ id, title, content }) => html`<section id="${id}"><h2>${title}</h2>\n${content}\n</section>`,
  )
  const page = html`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${markup(policy(program))}"><title>${report.title}</title><style>${markup(style)}</style></head>
<body>
<a class="skip" href="#answer">To the answer</a>
<main>
<header><h1>${report.title}</h1><p class="subtitle">${report.subtitle}</p></header>
${answerHtml(report)}
<nav aria-label="Contents"><span class="label">Contents</span><ul>${contents}</ul></nav>
${inLines(sectionsHtml)}
</main>
`
  return `${inAscii(page.toString())}${data}${program === '' ? '' : `<script>${program}</script>\n`}</body>
</html>
`
}

/** Letters beyond ASCII as references: a browser decodes a page without any several times as fast. */
const inAscii = (page: string) => page.replace(/[^\0-\x7f]/gu, (letter) => `&#${letter.codePointAt(0)};`)

/** Nothing comes from outside, and only this script runs. */
const policy = (script: string) =>
  [
    "default-src 'none'",
    `script-src ${script === '' ? "'none'" : policyHash(script)}`,
    `style-src ${policyHash(style)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')

const dataBlock = (document: unknown) =>
  `<script type="application/json" id="result">${JSON.stringify(document).replace(/[<\u0080-\uffff]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`)}</script>\n`

/** An answer of more letters is set smaller: it is more than a sentence. */
const longAnswer = 240

/** The first screen. */
function answerHtml({ summary, headline, head }: Report): Markup {
  if (!summary) return html`<section id="answer" class="answer">${headHtml(head)}${list(headline)}</section>`
  const { question, answer, sureness, limiting, limitingHead = 'What limits the line', next } = summary
  const cards: [kind: string, title: string, content: Markup][] = [
    ['sure', 'How sure that is', paragraphs(sureness)],
    ['limiting', limitingHead, limiting === '' ? empty : paragraphs([limiting])],
    ['next', 'What to do next', list(next, 'ol')],
  ]
  const shown = cards.filter(([, , content]) => !content.isEmpty)
  return html`<section id="answer" class="answer" aria-label="The answer">
${headHtml(head)}<span class="label">Question</span><p class="question">${question}</p>
<p class="verdict${answer.length > longAnswer ? ' long' : ''}"><span class="label">Answer</span>${prose(answer)}</p>
<div class="cards">${shown.map(([kind, title, content]) => html`<div class="${kind}"><h2>${title}</h2>${content}</div>`)}</div>
</section>`
}

/** What must be known before the answer is read. */
const headHtml = (head: Report['head']): Markup =>
  head === undefined
    ? empty
    : html`<div class="foremost" role="note"><h2>${head.title}</h2>${list(head.lines)}</div>\n`

/** A part of what there is something of; none where there is nothing. */
function part(id: string, title: string, ...contents: readonly Markup[]): Part[] {
  const filled = contents.filter((each) => !each.isEmpty)
  return filled.length === 0 ? [] : [{ id, title, content: inLines(filled) }]
}

/** All parts that this report has something for, in their order. */
function partsOf(report: Report, pictures: readonly Picture[]): Part[] {
  const { plan, moment, findings, given, rests, assumed, definitions, checklist } = report
  const table = (each: Table | undefined, heading: string) =>
    each && each.rows.length > 0 ? tableHtml(each, report.display, [heading]) : empty
  return [
    ...part('plan', 'The line, to scale', plan ? html`<div class="plan">${plan}</div>` : empty),
    ...part(
      'moment',
      'What happens on it',
      moment
        ? html`<div class="plan moment">${moment.wide}</div><div class="plan moment narrow">${moment.narrow}</div><div id="replay"></div>`
        : empty,
    ),
    ...subjectParts(report, pictures),
    ...part('findings', 'Findings of the check', table(findings, 'Findings of the check')),
    ...part('limits', 'Limits', list(report.limits)),
    ...part(
      'assumptions',
      'What the figures rest on',
      table(given, ''),
      table(rests?.table, ''),
      rests ? html`<p>${rests.exact}</p>` : empty,
      table(assumed, ''),
    ),
    ...part('safety', 'Safety', html`<div class="cautions">${list(report.cautions)}</div>`),
    ...part('definitions', 'What each measure means', table(definitions, 'What each measure means')),
    ...part('checklist', 'Study checklist', table(checklist, 'Study checklist')),
    ...part(
      'repeat',
      'To repeat this',
      html`<p><code>${report.repeat}</code></p><p class="origin">Made by ${report.origin}.</p>`,
    ),
  ]
}

/** The sections of tables and charts; what is said in sentences opens the first that has a table. */
function subjectParts(report: Report, pictures: readonly Picture[]): Part[] {
  const { tables, display, summary, headline, certainty } = report
  const subjects = Object.entries(sections) as [Section, string][]
  const isOf = ({ rows, section = 'figures' }: Table, key: Section) => section === key && rows.length > 0
  const [first] = subjects.find(([key]) => tables.some(({ section = 'figures' }) => section === key)) ?? []
  return subjects.flatMap(([key, title]) => {
    const charts = pictures.filter(({ chart }) => chart.section === key)
    const headings = [title, ...charts.map(({ chart }) => chart.title)]
    const opening = key === first ? [summary ? list(headline) : empty, notes(certainty)] : []
    const own = tables.filter((each) => isOf(each, key))
    return part(
      key,
      title,
      ...opening,
      ...charts.map(figureHtml),
      ...own.map((each) => tableHtml(each, display, headings)),
    )
  })
}
