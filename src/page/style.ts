/** The style of the page: light and dark, on a screen of any width and on paper; colours after Okabe & Ito (2008). */

import { replayStyle } from '../pictures/replay-style.js'
import { stopColourRules } from '../pictures/state-looks.js'

const light =
  '--ink: #1c2430; --paper: #ffffff; --quiet: #55606e; --accent: #0072b2; --rule: #d5dae0; --card: #f5f7f9; --warning: #b34700; --warned: #fdf4ee;'
const dark =
  '--ink: #e8ebef; --paper: #14181d; --quiet: #a5afba; --accent: #56b4e9; --rule: #39424c; --card: #1e242b; --warning: #e69f00; --warned: #2a2116;'

/**
 * All rules; `--ink`, `--paper`, `--quiet` and `--accent` are what drawings inside the page take their colours from. Until the charts
 * are drawn sections are laid out as they come into view, so that the first screen does not wait for those below.
 */
export const style = `${stopColourRules}
${replayStyle}
:root { color-scheme: light dark; ${light} }
@media (prefers-color-scheme: dark) { :root { ${dark} } }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; }
body { font: 1rem/1.5 system-ui, "DejaVu Sans", sans-serif; color: var(--ink); background: var(--paper); margin: 0; overflow-wrap: anywhere; }
main { max-width: 62rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; }
a { color: var(--accent); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
 .n { white-space: nowrap; }
.skip { position: absolute; left: -100rem; padding: .5rem 1rem; background: var(--paper); z-index: 2; } .skip:focus { left: .5rem; top: .5rem; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
h1 { font-size: 1.35rem; line-height: 1.25; margin: 0; } h2 { font-size: 1.3rem; line-height: 1.25; margin: 3rem 0 .6rem; padding-top: .9rem; border-top: 1px solid var(--rule); }
h3 { font-size: 1rem; margin: 1.9rem 0 .3rem; } h2 + h3, h2 + figure { margin-top: .8rem; } p { margin: .4rem 0; max-width: 46rem; }
.subtitle, .note, .origin { color: var(--quiet); font-size: .9rem; }
.label { display: block; color: var(--quiet); font-size: .8rem; font-weight: 600; margin-bottom: .15rem; }
.answer { margin: 1.2rem 0 0; } .question { font-size: 1.05rem; margin-top: 0; } .question::first-letter { text-transform: uppercase; }
.foremost { border-left: 4px solid var(--warning); padding: .7rem 1rem; margin: 0 0 1.2rem; background: var(--warned); border-radius: 0 6px 6px 0; } .foremost h2 { all: unset; display: block; font-weight: 600; color: var(--warning); } .foremost ul { margin: .4rem 0 0; font-size: .94rem; max-width: none; }
.verdict { font-size: 1.45rem; line-height: 1.35; font-weight: 600; margin: .9rem 0 1.2rem; max-width: 52rem; } .verdict.long { font-size: 1.15rem; }
.cards { display: grid; gap: .8rem; grid-template-columns: repeat(auto-fit, minmax(min(16rem, 100%), 1fr)); }
.cards > div { background: var(--card); border-radius: 6px; padding: .8rem 1rem; border-left: 4px solid var(--rule); } .cards > div.next { border-left-color: var(--accent); }
.cards h2 { all: unset; display: block; font-weight: 600; margin-bottom: .3rem; } .cards p, .cards ol { margin: 0 0 .5rem; font-size: .94rem; } .cards ol { padding-left: 1.2rem; } .cards li { margin: .25rem 0; }
nav { margin: 1.6rem 0 0; font-size: .9rem; } nav ul { list-style: none; margin: .2rem 0 0; padding: 0; display: flex; flex-wrap: wrap; gap: .1rem 1.1rem; } nav a { display: inline-block; padding: .2rem 0; }
.plain { padding-left: 1.2rem; max-width: 48rem; } .plain li { margin: .3rem 0; }
.wide { overflow-x: auto; margin: .3rem 0 0; } table { border-collapse: collapse; min-width: min(100%, 46rem); font-variant-numeric: tabular-nums; font-size: .92rem; overflow-wrap: normal; }
th, td { text-align: right; padding: .35rem .7rem; border-bottom: 1px solid var(--rule); vertical-align: top; font-weight: 400; } tbody td:not(.words) { white-space: nowrap; }
.words { text-align: left; }
td.words { min-width: 9rem; max-width: 30rem; overflow-wrap: anywhere; } td.brief { min-width: 0; overflow-wrap: break-word; } thead th { font-weight: 600; color: var(--quiet); font-size: .84rem; vertical-align: bottom; }
tbody th { position: sticky; left: 0; background: var(--paper); text-align: left; min-width: 7rem; max-width: min(20rem, 42vw); overflow-wrap: break-word; } thead th:first-child { text-align: left; position: sticky; left: 0; background: var(--paper); }
.many { font-size: .8rem; } .many th, .many td { padding: .3rem .25rem; } th:first-child, .many th:first-child { padding-left: 0; } .many thead th { font-size: .8rem; } .most, .most thead th { font-size: .72rem; } tbody td.parts:not(.words) { white-space: normal; }
.todo { color: var(--warning); font-weight: 600; }
figure { margin: 1.2rem 0; max-width: 57.5rem; } .box { position: relative; overflow-x: auto; background: #ffffff; border-radius: 6px; padding: .5rem; border: 1px solid var(--rule); }
.box img, .box canvas { display: block; } .box img { width: 100%; height: auto; min-width: 640px; max-width: 900px; }
figure .head { display: none; } figure.drawn .head { display: block; margin-bottom: .5rem; } figure .head h3 { margin: 0; } figure.drawn .box img { display: none; }
.plan { overflow-x: auto; } .plan svg { max-width: min(100%, 700px); height: auto; } .moment svg { max-width: 100%; height: auto; } .moment.narrow { display: none; }
.cautions { border-left: 4px solid var(--warning); padding: .2rem 1rem; background: var(--warned); border-radius: 0 6px 6px 0; }
code { font-size: .92em; } #repeat code { display: block; background: var(--card); padding: .6rem .8rem; border-radius: 6px; font-size: .9rem; }
@media screen and (scripting: enabled) { html:not([data-drawn]) section:not(.answer) { content-visibility: auto; contain-intrinsic-size: auto 50rem; } }
@media (min-width: 72rem) {
  main { max-width: 80rem; display: grid; grid-template-columns: 12rem minmax(0, 1fr); column-gap: 3rem; } main > * { grid-column: 2; }
  main > nav { grid-column: 1; grid-row: 1 / span 40; align-self: start; position: sticky; top: 1.5rem; margin: 0; max-height: calc(100vh - 3rem); overflow-y: auto; } nav ul { display: block; }
}
@media screen and (max-width: 46rem) { .moment { display: none; } .moment.narrow { display: block; } .moment.narrow svg { width: 100%; max-width: 34rem; } }
@media (max-width: 30rem) { .verdict { font-size: 1.2rem; } .verdict.long { font-size: 1.05rem; } h2 { font-size: 1.15rem; margin-top: 2.2rem; } table { font-size: .84rem; } th, td { padding: .3rem .35rem; } tbody th { min-width: 6rem; } td.words:not(.brief) { min-width: 7rem; } .plan:not(.moment) { margin: 0 -1rem; } }
@media print {
  :root { color-scheme: light; font-size: 9.5pt; ${light} } @page { margin: 14mm 12mm; } main { display: block; max-width: none; padding: 0; } nav, .skip { display: none; }
  h1 { font-size: 14pt; } h2 { font-size: 12pt; margin-top: 8mm; break-after: avoid; } h3, .note, .head { break-after: avoid; } .verdict, .verdict.long { font-size: 13pt; } p, .plain { max-width: none; }
  table { font-size: 8pt; width: 100%; } thead th { font-size: 8pt; } .many th { overflow-wrap: anywhere; } th, td, td.words, tbody th { padding: 1mm 1.5mm; min-width: 0; max-width: none; position: static; white-space: normal; } tbody th { overflow-wrap: break-word; } tbody td:not(.words) { white-space: normal; }
  tr, figure, .cards > div, .foremost { break-inside: avoid; } thead { display: table-header-group; } .wide, .box, .plan { overflow: visible; } .box { border: 0; padding: 0; }
  figure.drawn .head, figure.drawn .box canvas { display: none !important; } figure.drawn .box img, .box img { display: block; min-width: 0; max-width: 165mm; } figure.drawn .box { height: auto !important; }
  .cards > div, .cautions, .foremost, #repeat code { background: none; border: 1px solid var(--rule); } #replay { display: none; }
}
`
