/** The style of the page: light and dark, on a screen of any width and on paper; colours after Okabe & Ito (2008). */

import { replayStyle } from '../pictures/replay-style.js'
import { stopColourRules } from '../pictures/state-looks.js'
import { frontStyle } from './front-style.js'
import { printStyle } from './print-style.js'
import { tableStyle } from './table-style.js'
import { themes } from './theme.js'

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
