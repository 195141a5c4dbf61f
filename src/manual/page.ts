/** The manual as one page that needs nothing else: contents, all topics, and a script that searches them. */
import { policyHash } from '../page/base64.js'
import { empty, html, inLines, type Markup, markup } from '../report/markup.js'
import { type Block, blocksOf, type Inline } from './markdown.js'
import { style } from './style.js'
import { type Manual, type Part, parts, type Topic } from './topics.js'

/** The page; `program` names what it is of, with its version. Without a script nothing is searched. */
export function manualPage({ topics }: Manual, program: string, script = ''): string {
  const names = topics.map(({ name }) => name)
  const entries = Object.entries(parts) as [Part, string][]
  const of = (part: Part) => topics.filter((topic) => topic.part === part)
  const contents = entries.map(
    ([part, title]) =>
      html`<li><span class="label">${title}</span><ul>${of(part).map(
        (topic) => html`<li><a href="#${topic.name}">${topic.title}</a></li>`,
      )}</ul></li>`,
  )
  // a script may not hold what ends it
  const safe = script.replace(/<(?=\/script|!--)/gi, '\\x3c')
  const policy = `default-src 'none'; script-src ${safe === '' ? "'none'" : policyHash(safe)}; style-src ${policyHash(style)}; base-uri 'none'; form-action 'none'`
  const page = html`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${markup(policy)}"><title>${program}: manual</title><style>${markup(style)}</style></head>
<body>
<a class="skip" href="#text">To the text</a>
<header><h1>Manual</h1><p class="subtitle">${program}</p></header>
<nav aria-label="Contents"><div id="search" role="search" hidden><label for="sought">Search</label><input id="sought" type="search" autocomplete="off" spellcheck="false"><p id="count" role="status"></p><ol id="hits"></ol></div><ul class="contents">${contents}</ul></nav>
<main id="text">
${inLines(topics.map((topic) => topicHtml(topic, names)))}
</main>
`
  return `${page}${safe === '' ? '' : `<script>${safe}</script>\n`}</body>\n</html>\n`
}

const topicHtml = ({ name, part, text }: Topic, names: readonly string[]): Markup =>
  html`<section id="${name}" class="${part}">
${inLines(blocksOf(text).map((block) => blockHtml(block, names)))}
</section>`

/** Titles of topics are headings of the second level: the page has one of the first. */
const headings = ['h2', 'h3', 'h4'] as const

function blockHtml(block: Block, names: readonly string[]): Markup {
  const inline = (inlines: readonly Inline[]) => inlinesHtml(inlines, names)
  switch (block.kind) {
    case 'heading': {
      const tag = headings[Math.min(block.depth, headings.length) - 1]!
      return html`<${tag}>${inline(block.inlines)}</${tag}>`
    }
    case 'paragraph':
      return html`<p>${inline(block.inlines)}</p>`
    case 'code':
      return html`<pre tabindex="0"><code>${inLines(block.text.split('\n'))}</code></pre>`
    case 'quote':
      return html`<blockquote>${block.blocks.map((each) => blockHtml(each, names))}</blockquote>`
    case 'list': {
      const tag = block.isOrdered ? 'ol' : 'ul'
      return html`<${tag}>${block.items.map((item) => html`<li>${itemHtml(item, names)}</li>`)}</${tag}>`
    }
    case 'table':
      return html`<div class="wide" tabindex="0"><table><thead><tr>${block.head.map(
        (cell) => html`<th>${inline(cell)}</th>`,
      )}</tr></thead><tbody>${block.rows.map(
        (row) => html`<tr>${row.map((cell) => html`<td>${inline(cell)}</td>`)}</tr>`,
      )}</tbody></table></div>`
  }
}

/** An item of one paragraph is set without one. */
function itemHtml(blocks: readonly Block[], names: readonly string[]): Markup {
  const [first, ...rest] = blocks
  if (first === undefined) return empty
  const begin = first.kind === 'paragraph' ? inlinesHtml(first.inlines, names) : blockHtml(first, names)
  return html`${begin}${rest.map((each) => blockHtml(each, names))}`
}

const inlinesHtml = (inlines: readonly Inline[], names: readonly string[]): Markup =>
  html`${inlines.map((each) => inlineHtml(each, names))}`

function inlineHtml(inline: Inline, names: readonly string[]): Markup {
  switch (inline.kind) {
    case 'text':
      return html`${inline.text}`
    case 'code': {
      // what the terminal prints of a topic stands in this page
      const [, topic] = /^tapeshift help ([a-z-]+)$/.exec(inline.text) ?? []
      const code = html`<code>${inline.text}</code>`
      return topic !== undefined && names.includes(topic) ? html`<a href="#${topic}">${code}</a>` : code
    }
    case 'strong':
    case 'em':
      return html`<${inline.kind}>${inlinesHtml(inline.inlines, names)}</${inline.kind}>`
    case 'link':
      return /^(?:https?:|#)/.test(inline.to)
        ? html`<a href="${inline.to}">${inlinesHtml(inline.inlines, names)}</a>`
        : inlinesHtml(inline.inlines, names)
  }
}
