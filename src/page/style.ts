/** The style of the page: light and dark, on a screen of any width and on paper; colours after Okabe & Ito (2008). */

import { replayStyle } from '../pictures/replay-style.js'
import { stopColourRules } from '../pictures/state-looks.js'

/** Colours of the page by day and by night. Letters of each keep a contrast of 4.5 to 1 on its paper, its cards and its warned ground (WCAG 2.2, 1.4.3). */
export const themes = {
  light:
    '--ink: #1c2430; --paper: #ffffff; --quiet: #55606e; --accent: #0072b2; --rule: #d5dae0; --card: #f5f7f9; --warning: #9a3d00; --warned: #fdf4ee; --good: #00664a; --error: #a32f0c; --open: #7a5200;',
  dark: '--ink: #e8ebef; --paper: #14181d; --quiet: #a5afba; --accent: #56b4e9; --rule: #39424c; --card: #1e242b; --warning: #f0a830; --warned: #2a2116; --good: #4fd0a0; --error: #ff9a75; --open: #f0b849;',
}

/** Style of the first screen of a page. */
const frontStyle = `.answer { margin: .7rem 0 0; } .question { color: var(--quiet); font-size: .95rem; margin: 0; max-width: none; } .question::first-letter { text-transform: uppercase; }
.foremost { border-left: 4px solid var(--error); padding: .6rem 1rem; margin: 0 0 .8rem; background: var(--warned); border-radius: 0 6px 6px 0; } .foremost h2 { font-size: 1rem; margin: 0; color: var(--error); } .foremost ul, .foremost p { margin: .3rem 0 0; font-size: .94rem; max-width: none; }
.verdict { font-size: 1.45rem; line-height: 1.3; font-weight: 600; margin: .35rem 0 .7rem; max-width: none; } .verdict.long { font-size: 1.1rem; }
.word.good { color: var(--good); } .word.error { color: var(--error); } .word.warning { color: var(--open); }
.of { color: var(--quiet); font-size: .88rem; margin: .2rem 0; }
.tiles { display: grid; gap: .7rem; grid-auto-flow: column; grid-auto-columns: minmax(0, 1fr); margin: .4rem 0 .8rem; } .tile { background: var(--card); border-radius: 6px; border-top: 3px solid var(--rule); padding: .5rem .8rem .6rem; }
.tile.good { border-top-color: var(--good); } .tile.error { border-top-color: var(--error); } .tile.warning { border-top-color: var(--open); }
.tile dt { color: var(--quiet); font-size: .82rem; line-height: 1.25; } .tile dd { margin: .1rem 0 0; } .value { font-size: 1.6rem; line-height: 1.2; font-weight: 600; font-variant-numeric: tabular-nums; } .unit { font-size: .84rem; } .below { display: flex; flex-wrap: wrap; gap: 0 .8rem; font-size: .84rem; } .below span + span { color: var(--quiet); }
.answer figure { margin: .6rem 0; } .answer figure h3 { font-size: .95rem; } .answer figure .note { margin: .1rem 0; font-size: .82rem; }
.cards { display: grid; gap: .7rem; grid-template-columns: repeat(auto-fit, minmax(min(18rem, 100%), 1fr)); margin-top: .7rem; }
.cards > div, .under > div { background: var(--card); border-radius: 6px; padding: .6rem .9rem; border-left: 4px solid var(--rule); } .cards > div.next { border-left-color: var(--accent); }
.cards h2, .under h2 { font-size: .94rem; margin: 0 0 .2rem; } .cards p, .cards .plain, .under .card p, .under .plain { margin: 0; max-width: none; font-size: .88rem; line-height: 1.42; } .cards .plain { padding-left: 1.1rem; } .cards li { margin: .15rem 0; }
.under { margin-top: .7rem; }
.caution { border-left: 4px solid var(--warning); background: var(--warned); border-radius: 0 6px 6px 0; padding: .45rem .9rem; margin: .7rem 0 0; font-size: .88rem; max-width: none; }
@media screen and (min-width: 78rem) { .beside { display: grid; grid-template-columns: minmax(0, 1fr) 25rem; grid-template-rows: auto 1fr; gap: 0 1rem; align-items: start; } .beside .cards { grid-column: 2; grid-row: 1 / span 2; } .beside .cards { grid-template-columns: minmax(0, 1fr); margin-top: .6rem; } .beside .shown > :first-child { margin-top: .6rem; } }
@media (max-width: 46rem) { .tiles { grid-auto-flow: row; grid-template-columns: repeat(2, minmax(0, 1fr)); } .verdict { font-size: 1.2rem; } .verdict.long { font-size: 1.02rem; } .value { font-size: 1.35rem; } .tile { padding: .45rem .6rem; } }`

/** Style of tables: on a screen that is too narrow for them each row is a card. */
const tableStyle = `.wide { overflow-x: auto; margin: .3rem 0 0; } table { border-collapse: collapse; min-width: min(100%, 40rem); font-variant-numeric: tabular-nums; font-size: .9rem; overflow-wrap: normal; }
th, td { text-align: right; padding: .3rem .6rem; border-bottom: 1px solid var(--rule); vertical-align: top; font-weight: 400; } tbody td:not(.words) { white-space: nowrap; }
.words { text-align: left; }
td.words { min-width: 9rem; max-width: 30rem; overflow-wrap: anywhere; } td.brief { min-width: 0; overflow-wrap: break-word; } thead th { font-weight: 600; color: var(--quiet); font-size: .84rem; vertical-align: bottom; }
tbody th { position: sticky; left: 0; background: var(--paper); text-align: left; min-width: 7rem; max-width: min(20rem, 42vw); overflow-wrap: break-word; } thead th:first-child { text-align: left; position: sticky; left: 0; background: var(--paper); }
.many { font-size: .8rem; } .many th, .many td { padding: .3rem .25rem; } th:first-child, .many th:first-child { padding-left: 0; } .many thead th { font-size: .8rem; } .most, .most thead th { font-size: .72rem; } tbody td.parts:not(.words) { white-space: normal; }
@media screen and (max-width: 56rem) { table { font-size: .84rem; } th, td { padding: .3rem .4rem; } tbody th { min-width: 5rem; } }
@media screen and (max-width: 46rem) {
  table { font-size: .86rem; min-width: 100%; } th, td { padding: .3rem .35rem; } tbody th { min-width: 5rem; } td.words:not(.brief) { min-width: 0; }
  .as-cards, .as-cards tbody { display: block; font-size: .88rem; } .as-cards thead { display: none; }
  .as-cards tr { display: block; background: var(--card); border-radius: 6px; padding: .4rem .6rem; margin: 0 0 .4rem; }
  .as-cards tbody th { display: block; position: static; background: none; border: 0; padding: 0 0 .15rem; max-width: none; font-weight: 600; }
  .as-cards tbody td, .as-cards tbody td:not(.words) { display: inline-block; border: 0; padding: 0; margin-right: .8rem; min-width: 0; max-width: calc(100% - .8rem); text-align: left; white-space: normal; } .as-cards tbody td:empty { display: none; }
  .as-cards td::before { content: attr(data-head) ": "; color: var(--quiet); } .as-cards td::after { content: " "; }
}`

/** Style of the page on paper: light, folds open, pictures in place of charts, tables only where no chart shows the same. */
const printStyle = `@media print {
  :root { color-scheme: light; font-size: 8.5pt; ${themes.light} } @page { size: A4; margin: 12mm 12mm; } main { max-width: none; padding: 0; } .skip, .bar, .data, .screen-only, #replay { display: none; }
  details::details-content { content-visibility: visible; display: block; block-size: auto; } .fold { border: 0; } .fold > summary { padding: 3mm 0 .5mm; break-after: avoid; } .fold > summary::before { display: none; } .gist { display: none; } .fold > summary h2 { font-size: 11pt; } .inside { padding: 0; }
  h1 { font-size: 12pt; } h3, .note, .head { break-after: avoid; } h3 { margin-top: 3mm; } .verdict, .verdict.long { font-size: 12pt; } p, .plain { max-width: none; }
  .tiles { grid-auto-flow: column; grid-template-columns: none; } .value { font-size: 13pt; }
  table { font-size: 7.5pt; width: 100%; min-width: 0; } thead th { font-size: 7.5pt; } .many th { overflow-wrap: anywhere; } th, td, td.words, tbody th { padding: .45mm 1.2mm; min-width: 0; max-width: none; position: static; white-space: normal; } tbody th { overflow-wrap: break-word; } tbody td:not(.words) { white-space: normal; }
  tr, figure, .cards > div, .foremost, .tile { break-inside: avoid; } thead { display: table-header-group; } .wide, .box, .plan { overflow: visible; } .box { border: 0; padding: 0; } figure { margin: 2mm 0; }
  figure.drawn .head, figure.drawn .box canvas { display: none !important; } figure.drawn .box img, .box img { display: block; min-width: 0; max-width: 125mm; } figure.drawn .box { height: auto !important; }
  .cards > div, .cautions, .caution, .foremost, .tile, #repeat code { background: none; border: 1px solid var(--rule); } .plan svg { max-height: 48mm; } .moment svg { max-height: 88mm; }
}`

/** All rules; `--ink`, `--paper`, `--quiet` and `--accent` are what drawings inside the page take their colours from. */
export const style = `${stopColourRules}
${replayStyle}
:root { color-scheme: light dark; ${themes.light} }
@media (prefers-color-scheme: dark) { :root { ${themes.dark} } }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; }
body { font: 1rem/1.5 system-ui, "DejaVu Sans", sans-serif; color: var(--ink); background: var(--paper); margin: 0; overflow-wrap: anywhere; }
main { max-width: 80rem; margin: 0 auto; padding: 1.1rem 1rem 4rem; }
a { color: var(--accent); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.n { white-space: nowrap; }
.skip { position: absolute; left: -100rem; padding: .5rem 1rem; background: var(--paper); z-index: 2; } .skip:focus { left: .5rem; top: .5rem; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
h1 { font-size: 1.05rem; line-height: 1.3; margin: 0; } h3 { font-size: 1rem; margin: 1.6rem 0 .3rem; } p { margin: .4rem 0; max-width: 46rem; }
.subtitle, .note, .origin { color: var(--quiet); font-size: .88rem; } .subtitle { margin: .1rem 0 0; font-size: .82rem; max-width: none; }
ul.plain, ol.plain { padding-left: 1.2rem; max-width: 48rem; } .plain li { margin: .3rem 0; }
${frontStyle}
.folds { margin-top: 1.6rem; } .bar { display: flex; align-items: baseline; justify-content: space-between; gap: 1rem; }
.bar h2 { font-size: .8rem; color: var(--quiet); font-weight: 600; margin: 0; }
button { font: inherit; font-size: .88rem; color: var(--accent); background: none; border: 1px solid var(--rule); border-radius: 6px; padding: .25rem .7rem; cursor: pointer; } button:hover { border-color: var(--accent); }
.fold { border-top: 1px solid var(--rule); } .fold:last-child { border-bottom: 1px solid var(--rule); } .bar + .fold { margin-top: .5rem; }
.fold > summary { list-style: none; cursor: pointer; padding: .5rem 0 .5rem 1.5rem; position: relative; } .fold > summary::-webkit-details-marker { display: none; }
.fold > summary::before { content: ""; position: absolute; left: .25rem; top: 1.05rem; width: .5rem; height: .5rem; border-right: 2px solid var(--accent); border-bottom: 2px solid var(--accent); transform: rotate(-45deg); } .fold[open] > summary::before { transform: rotate(45deg); top: .9rem; }
.fold > summary h2 { display: inline; font-size: 1.02rem; margin: 0; } .fold > summary:hover h2 { text-decoration: underline; } .gist { color: var(--quiet); font-size: .86rem; margin-left: .5rem; }
.inside { padding: .2rem 0 1.4rem 1.5rem; } .inside > :first-child, .inside > .screen-only:first-child > h3 { margin-top: 0; }
.data { margin: .2rem 0 1rem; font-size: .92rem; } .data > summary { cursor: pointer; color: var(--accent); padding: .3rem 0; }
figure { margin: 1.2rem 0; max-width: 58.5rem; } .box { position: relative; overflow-x: auto; background: #ffffff; border-radius: 6px; padding: .5rem; border: 1px solid var(--rule); }
.box img, .box canvas { display: block; } .box img { width: 100%; height: auto; max-width: 900px; }
figure .head { display: none; } figure.drawn .head { display: block; margin-bottom: .4rem; } figure .head h3 { margin: 0; } figure.drawn .box { background: var(--paper); } figure.drawn .box img { display: none; }
.plan { overflow-x: auto; } .plan svg { max-width: min(100%, 560px); height: auto; } .moment svg { max-width: 100%; height: auto; } .moment.narrow { display: none; }
${tableStyle}
.todo { color: var(--warning); font-weight: 600; }
.cautions { border-left: 4px solid var(--warning); padding: .2rem 1rem; background: var(--warned); border-radius: 0 6px 6px 0; }
code { font-size: .92em; } #repeat code { display: block; background: var(--card); padding: .6rem .8rem; border-radius: 6px; font-size: .9rem; }
@media (min-width: 46.01rem) { html { scrollbar-gutter: stable; } .verdict wbr { display: none; } }
@media screen and (max-width: 46rem) { .moment { display: none; } .moment.narrow { display: block; } .moment.narrow svg { width: 100%; max-width: 34rem; } .gist { display: block; margin: .1rem 0 0; } .inside { padding-left: 0; } }
@media (max-width: 30rem) { .plan:not(.moment) { margin: 0 -1rem; } }
${printStyle}
`
