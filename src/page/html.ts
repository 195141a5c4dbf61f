/** The report as one page that needs nothing else: pictures, style, result document and the script that draws it are inside. */
import type { Picture } from '../report/marks/chart.js'
import { html, type Markup, markup } from '../report/markup.js'
import type { Report } from '../report/report.js'
import { policyHash } from './base64.js'
import { foldsHtml } from './folds.js'
import { frontHtml } from './front.js'
import { style } from './style.js'

/** What is inside the page beside the report; without a script it shows pictures only. */
export interface PageContents {
  /** The result document. */
  document?: unknown
  /** A program for browsers that draws what the document holds. */
  script?: string
  /** The page beside this one in which the line can be changed; none where nobody says. */
  tryPage?: string
}

/** The page of a report with its charts: what a reader with a minute reads, and all else folded under the questions that it answers. */
export function reportPage(
  report: Report,
  pictures: readonly Picture[],
  { document, script = '', tryPage }: PageContents = {},
): string {
  const data = document === undefined ? '' : dataBlock('result', document)
  const program = scriptText(script)
  const first = pictures.find(({ chart }) => chart.name === report.front?.picture)
  const others = pictures.filter((each) => each !== first)
  const page = html`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${markup(policy(program))}"><title>${report.title}</title><style>${markup(style)}</style></head>
<body>
<a class="skip" href="#answer">To the answer</a>
<main>
<header><h1>${report.title}</h1><p class="subtitle">${report.subtitle}${tryPage === undefined ? '' : tryLink(tryPage)}</p></header>
${frontHtml(report, first)}
${foldsHtml(report, others)}
</main>
`
  return `${inAscii(page.toString())}${data}${program === '' ? '' : `<script>${program}</script>\n`}</body>
</html>
`
}

/** Where the line can be changed: beside the words of the head, which the first screen has room for. */
const tryLink = (page: string): Markup => html` <a href="${page}">Change a value and see what it does</a>`

/** Letters beyond ASCII as references: a browser decodes a page without any several times as fast. */
const inAscii = (page: string) => page.replace(/[^\0-\x7f]/gu, (letter) => `&#${letter.codePointAt(0)};`)

/** A program as it may stand in a page: a script may not hold what ends it. */
export const scriptText = (script: string): string => script.replace(/<(?=\/script|!--)/gi, '\\x3c')

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

/** Data that a page holds for its program, under an id. */
export const dataBlock = (id: string, data: unknown): string =>
  `<script type="application/json" id="${id}">${JSON.stringify(data).replace(/[<\u0080-\uffff]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`)}</script>\n`
