/** The first screen of a page: the verdict, four figures, one picture, what to do next, what it all rests on, the safety line. */
import type { Front, Tile } from '../report/front.js'
import type { Picture } from '../report/marks/chart.js'
import { empty, html, inLines, type Markup } from '../report/markup.js'
import type { Report } from '../report/report.js'
import type { Said, Verdict } from '../report/screen.js'
import type { Table } from '../report/table.js'
import { figureHtml, largeProse, list, paragraphs, prose, tableHtml } from './parts.js'

/** A verdict of more letters is set smaller: it is more than a sentence. */
const longVerdict = 170

/** Words that head sentences in the terminal, where a page has room for more. */
const fullHeads: Readonly<Record<string, string>> = {
  Errors: 'What the check calls an error',
  Prices: 'What the cost leaves out',
  Check: 'What the check warns of',
  Limit: 'What limits the line',
  Next: 'What to do next',
  Basis: 'What the answer is based on',
  Asked: 'What was asked for',
  Case: 'How long a case takes',
  Found: 'What was found',
  'Less base': 'What differs from the base',
  Cheaper: 'The next cheaper design',
  Draws: 'If the inputs are other than given',
  Margin: 'How much is to spare',
  Pick: 'Why this one',
  Points: 'Where the line cannot work',
  Few: 'What is based on few events',
  Doubts: 'What speaks against the fit',
  Record: 'What was done to the record',
  Output: 'How much comes out',
  Days: 'How many days match',
  Stops: 'Which stops differ',
  'Own stops': 'With the stops of the plant',
}

/** What must be known before the verdict is read. */
const isForemost = ({ tone, head }: Said): boolean => tone === 'error' || head === 'Prices'

/** The picture is the one that explains the verdict; without one there is none. */
export function frontHtml({ question, display, ...report }: Report, picture: Picture | undefined): Markup {
  const front = report.front!
  const { verdict, parts } = front.screen!
  const said = parts.flatMap((part) => ('head' in part && !front.told.includes(part.head) ? [part] : []))
  const tables = parts.flatMap((part) => ('head' in part ? [] : [part]))
  const rests = said.find((part) => part.head === 'Basis')
  const safety = said.find((part) => part.head === 'Safety')
  const next = said.find((part) => part.head === 'Next')
  const first = said.filter(isForemost)
  const rest = said.filter((part) => ![safety, rests, next, ...first].includes(part))
  return html`<section id="answer" class="answer" aria-label="The answer">
${first.length > 0 ? html`<div class="foremost" role="note">${first.map(saidBox)}</div>\n` : empty}${question ? html`<p class="question">${prose(question)}</p>` : empty}
<h2 class="unseen">The answer</h2>
${verdictHtml(verdict)}
${tilesHtml(front)}
<div class="beside"><div class="shown">${inLines(tables.map((table: Table) => tableHtml(table, display, [])))}
${picture ? figureHtml(picture) : empty}</div>
<div class="cards">${[next, ...rest].map((part) => (part ? html`<div class="${part === next ? 'next' : 'card'}">${saidBox(part)}</div>` : empty))}</div>
<div class="under">${rests ? html`<div class="card">${saidBox(rests)}</div>` : empty}${safety ? html`<p class="caution"><strong>Safety.</strong> ${prose(safety.lines.join(' '))} <a href="#safety">All cautions</a></p>` : empty}</div></div>
</section>`
}

const saidBox = ({ head, lines }: Said): Markup =>
  html`<h2>${fullHeads[head] ?? head}</h2>${lines.length > 1 ? list(lines, head === 'Next' ? 'ol' : 'ul') : paragraphs(lines)}`

function verdictHtml({ word, tone, text }: Verdict): Markup {
  const size = word.length + text.length > longVerdict ? ' long' : ''
  const first = word === '' ? empty : html`<strong class="word ${tone}">${word}</strong>`
  return html`<p class="verdict${size}">${first}${text.startsWith(':') || word === '' ? '' : ' '}${largeProse(text)}</p>`
}

function tilesHtml({ of, tiles }: Front): Markup {
  if (tiles.length === 0) return empty
  const caption = of === undefined ? empty : html`<p class="of">${of}</p>`
  return html`${caption}<dl class="tiles">${tiles.map(tileHtml)}</dl>`
}

function tileHtml({ label, value, unit = '', interval = '', note = '', tone = 'plain' }: Tile): Markup {
  const below = [interval, note]
    .filter((each) => each !== '')
    .map((each) => html`<span>${largeProse(each)}</span>`)
  return html`<div class="tile ${tone}"><dt>${label}</dt><dd><span class="value">${value}</span> <span class="unit">${unit}</span>${below.length > 0 ? html`<span class="below">${below}</span>` : empty}</dd></div>`
}
