/** The report as one page that needs nothing else: pictures, style, result document and the script that draws it are inside. */
import type { Picture } from '../report/marks/chart.js'
import { escaped } from '../report/markup.js'
import type { Report, Table } from '../report/report.js'
import { type Section, sectionOfChart, sections } from '../report/sections.js'
import { policyHash } from './base64.js'
import { figureHtml, list, paragraphs, prose, tableHtml } from './parts.js'
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
  html: string
}

const isFilled = (table: Table | undefined): table is Table => table !== undefined && table.rows.length > 0

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
  return `${inAscii(`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${policy(program)}"><title>${escaped(report.title)}</title><style>${style}</style></head>
<body>
<a class="skip" href="#answer">To the answer</a>
<main>
<header><h1>${escaped(report.title)}</h1><p class="subtitle">${escaped(report.subtitle)}</p></header>
${answerHtml(report)}
<nav aria-label="Contents"><span class="label">Contents</span><ul>${[{ id: 'answer', title: 'The answer' }, ...parts].map(({ id, title }) => `<li><a href="#${id}">${escaped(title)}</a></li>`).join('')}</ul></nav>
${parts.map(({ id, title, html }) => `<section id="${id}"><h2>${escaped(title)}</h2>\n${html}\n</section>`).join('\n')}
</main>
`)}${data}${program === '' ? '' : `<script>${program}</script>\n`}</body>
</html>
`
}

/** Letters beyond ASCII as references: a browser decodes a page without any several times as fast. */
const inAscii = (html: string) => html.replace(/[^\0-\x7f]/gu, (letter) => `&#${letter.codePointAt(0)};`)

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
function answerHtml({ summary, headline, head }: Report): string {
  if (!summary) return `<section id="answer" class="answer">${headHtml(head)}${list(headline)}</section>`
  const { question, answer, sureness, limiting, next } = summary
  const card = (kind: string, title: string, html: string) =>
    html === '' ? '' : `<div class="${kind}"><h2>${title}</h2>${html}</div>`
  return `<section id="answer" class="answer" aria-label="The answer">
${headHtml(head)}<span class="label">Question</span><p class="question">${escaped(question)}</p>
<p class="verdict${answer.length > longAnswer ? ' long' : ''}"><span class="label">Answer</span>${prose(answer)}</p>
<div class="cards">${card('sure', 'How sure that is', paragraphs(sureness))}${card('limiting', 'What limits the line', limiting === '' ? '' : paragraphs([limiting]))}${card('next', 'What to do next', list(next, 'ol'))}</div>
</section>`
}

/** What must be known before the answer is read. */
const headHtml = (head: Report['head']): string =>
  head === undefined
    ? ''
    : `<div class="foremost" role="note"><h2>${escaped(head.title)}</h2>${list(head.lines)}</div>\n`

/** All parts that this report has something for, in their order. */
function partsOf(report: Report, pictures: readonly Picture[]): Part[] {
  const { plan, moment, findings, given, assumed, definitions, checklist } = report
  const part = (id: string, title: string, ...html: string[]): Part[] =>
    html.every((each) => each === '')
      ? []
      : [{ id, title, html: html.filter((each) => each !== '').join('\n') }]
  const table = (each: Table | undefined, heading: string) =>
    isFilled(each) ? tableHtml(each, [heading]) : ''
  const subjects = Object.entries(sections) as [Section, string][]
  // what is said in sentences opens the first of them
  const first = subjects.find(([key]) =>
    report.tables.some(({ section = 'figures' }) => section === key),
  )?.[0]
  return [
    ...part('plan', 'The line, to scale', plan ? `<div class="plan">${plan}</div>` : ''),
    ...part(
      'moment',
      'What happens on it',
      moment
        ? `<div class="plan moment">${moment.wide}</div><div class="plan moment narrow">${moment.narrow}</div><div id="replay"></div>`
        : '',
    ),
    ...subjects.flatMap(([key, title]) => {
      const charts = pictures.filter(({ chart }) => sectionOfChart(chart.name) === key)
      const headings = [title, ...charts.map(({ chart }) => chart.title)]
      return part(
        key,
        title,
        ...(key === first
          ? [report.summary ? list(report.headline) : '', paragraphs(report.certainty, 'note')]
          : []),
        ...charts.map(figureHtml),
        ...report.tables
          .filter(({ rows, section = 'figures' }) => rows.length > 0 && section === key)
          .map((each) => tableHtml(each, headings)),
      )
    }),
    ...part('findings', 'Findings of the check', table(findings, 'Findings of the check')),
    ...part('limits', 'Limits', list(report.limits)),
    ...part('assumptions', 'What the figures rest on', table(given, ''), table(assumed, '')),
    ...part('safety', 'Safety', `<div class="cautions">${list(report.cautions)}</div>`),
    ...part('definitions', 'What each measure means', table(definitions, 'What each measure means')),
    ...part('checklist', 'Study checklist', table(checklist, 'Study checklist')),
    ...part(
      'repeat',
      'To repeat this',
      `<p><code>${escaped(report.repeat)}</code></p><p class="origin">Made by ${escaped(report.origin)}.</p>`,
    ),
  ]
}
