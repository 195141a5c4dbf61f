/** Style of the page to try a line in, upon that of the reports. */

/** The answer beside the line: every figure has its place, so that nothing jumps while it changes. */
const answerStyle = `.answer.tried { margin: 0; font-variant-numeric: tabular-nums; } .answer.tried.old :is(.looked .value, .looked .difference, .looked .word, .verdict, .verdict .word) { color: var(--quiet); font-style: italic; }
.answer.tried .verdict { font-size: 1.02rem; line-height: 1.4; } .answer.tried :is(.verdict, .problems) { min-height: 7.8rem; margin: 0 0 .5rem; } .problems h2 { font-size: 1.02rem; margin: .2rem 0; } .problems :is(li, p) { font-size: .9rem; line-height: 1.4; } .answer.tried .verdict .word { display: block; font-size: 1.45rem; line-height: 1.2; }
.looked { margin: 0; min-height: 24rem; border-top: 1px solid var(--rule); } .looked .tile { display: flex; flex-wrap: wrap; gap: 0 .4rem; align-items: baseline; background: none; border: 0; border-bottom: 1px solid var(--rule); border-radius: 0; padding: .3rem 0; }
.looked .tile::after { content: ""; flex-basis: 100%; order: 1; } .looked :is(.came, .difference) { order: 2; } .looked :is(.now, .difference) { flex: 1 1 0; min-width: 0; } .looked dt { color: var(--ink); font-size: .88rem; } .looked dd { margin: 0; } .looked .now { text-align: right; } .looked .value { font-size: 1.15rem; } .looked .unit, .looked .plus-minus { font-size: .8rem; }
.looked :is(.came, .difference) { font-size: .8rem; min-height: 1.5em; color: var(--quiet); } .looked :is(.came, .difference)::before { content: "\\200b"; } .looked .difference { text-align: right; color: var(--ink); } .looked .word { white-space: nowrap; }
.progress { min-height: 2.8em; margin: .4rem 0; }
.answer.tried .card { background: var(--card); border-left: 4px solid var(--rule); border-radius: 6px; padding: .4rem .8rem; margin-top: .5rem; } .answer.tried .card.error { border-left-color: var(--error); } .answer.tried .card.warning { border-left-color: var(--warning); }
.answer.tried .card h2 { font-size: .92rem; margin: 0; } .answer.tried .card p, .answer.tried .card .plain { font-size: .86rem; line-height: 1.4; margin: .1rem 0 0; } .answer.tried .card .plain { padding-left: 1.1rem; }
.findings { list-style: none; padding: 0; font-size: .92rem; } .findings li { padding: .4rem 0; border-bottom: 1px solid var(--rule); max-width: 60rem; }
`

/** The parts of the line and their fields. */
const fieldStyle = `.chooser { display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; margin: .6rem 0; padding: .5rem 0; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); }
.rooms { display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; min-width: 0; } .room { display: inline-flex; flex-wrap: wrap; gap: .3rem; align-items: center; min-width: 0; } .room-name { flex: none; white-space: nowrap; color: var(--quiet); font-size: .82rem; margin-right: .2rem; }
button.part { padding: .15rem .6rem; max-width: 14rem; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
.fields > h2 { font-size: 1.1rem; margin: .2rem 0 0; } .group h3::first-letter { text-transform: uppercase; } .group h3 { margin: 1rem 0 .2rem; font-size: .95rem; }
.acts { border: 0; padding: 0; min-width: 0; display: flex; flex-wrap: wrap; gap: .4rem; align-items: center; margin: .4rem 0 .8rem; font-size: .88rem; } .acts .add { display: inline-flex; flex-wrap: wrap; gap: .4rem; align-items: center; }
.field-grid { display: grid; gap: .7rem 1.4rem; align-items: start; grid-template-columns: repeat(auto-fill, minmax(min(17rem, 100%), 1fr)); }
.field { min-width: 0; position: relative; } .field-head { display: flex; gap: .4rem; align-items: center; min-height: 1.8rem; } .field-head label { font-size: .9rem; } .field-head label::first-letter { text-transform: uppercase; }
.field-head .quiet { margin-left: auto; white-space: nowrap; } .fields > .note::first-letter { text-transform: uppercase; } button.quiet { min-height: 1.5rem; padding: 0 .4rem; font-size: .8rem; border-color: transparent; background: none; text-decoration: underline; }
.number { display: grid; grid-template-columns: minmax(4rem, 1fr) auto; gap: .2rem .4rem; } .number .drag { grid-column: 1 / -1; margin: 0; height: 1.5rem; width: 100%; } .number input[type="text"] { text-align: right; font-variant-numeric: tabular-nums; }
.number.bare > input[type="text"] { grid-column: 1 / -1; } .field > select, .field > input { width: 100%; } .inner { display: flex; flex-wrap: wrap; gap: .4rem; align-items: center; min-height: 2rem; font-size: .9rem; } button.path { padding: 0; min-height: 0; } button.example { margin-top: .2rem; padding: 0; } .sought { display: block; margin: .4rem 0 .8rem; font-size: .9rem; } input.parts { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .82rem; }
.field .usual { color: var(--quiet); font-style: italic; } .field [aria-invalid="true"] { border: 2px solid var(--error); }
.from { color: var(--quiet); font-size: .8rem; margin: 0; } .field-head .from { margin-left: auto; padding-right: .4rem; } .wrong, .wrong p { color: var(--error); font-size: .86rem; margin: 0; }
button.about { flex: none; width: 1.5rem; height: 1.5rem; min-height: 0; padding: 0; line-height: 1; border-radius: 50%; font-size: .84rem; } button.about[aria-expanded="true"] { background: var(--accent); color: var(--paper); }
.about-words { background: var(--card); border-left: 4px solid var(--accent); border-radius: 0 6px 6px 0; padding: .3rem .7rem; margin: .3rem 0; font-size: .86rem; } .about-words p { margin: .2rem 0; } .about-words p::first-letter { text-transform: uppercase; }
@media (min-width: 46.01rem) { .chooser:not(.lots) .list { display: none; } .chooser.lots .rooms { display: none; } }
@media (max-width: 46rem) { .chooser .rooms { display: none; } .list select { flex: 1; } .list { width: 100%; } }
`

/** Rules beside those of `page/style`. */
export const tryStyle = `main.try { max-width: 110rem; padding-bottom: 2rem; }
.top { display: flex; flex-wrap: wrap; gap: .5rem 2rem; justify-content: space-between; align-items: flex-start; }
.top > div:first-child { flex: 1 1 20rem; min-width: 0; } .top .subtitle { max-width: 46rem; }
.tools { display: flex; flex-wrap: wrap; gap: .4rem; position: relative; }
button, .copies > summary { min-height: 2rem; background: var(--paper); }
:is(button[disabled], button[aria-disabled="true"]) { color: var(--quiet); cursor: default; border-style: dashed; } :is(button[disabled], button[aria-disabled="true"]):hover { border-color: var(--rule); }
button[aria-pressed="true"] { background: var(--accent); border-color: var(--accent); color: var(--paper); }
select, input[type="text"] { font: inherit; font-size: .92rem; color: var(--ink); background: var(--paper); border: 1px solid var(--quiet); border-radius: 6px; padding: .2rem .4rem; min-height: 2rem; min-width: 0; max-width: 100%; }
input[type="range"] { accent-color: var(--accent); min-width: 0; }
.copies > summary { list-style: none; font-size: .88rem; color: var(--accent); border: 1px solid var(--rule); border-radius: 6px; padding: .25rem .7rem; cursor: pointer; } .copies > summary::-webkit-details-marker { display: none; } .copies > summary:hover { border-color: var(--accent); }
.copies-words { position: absolute; z-index: 4; right: 0; top: 100%; margin-top: .3rem; width: min(38rem, calc(100vw - 2rem)); max-height: 70vh; overflow-y: auto; background: var(--card); border: 1px solid var(--quiet); border-radius: 6px; padding: .2rem 1rem 1rem; }
.copy h3 { margin: .8rem 0 .2rem; } .copy textarea { display: block; width: 100%; margin: 0 0 .4rem; padding: .5rem .7rem; color: var(--ink); background: var(--paper); border: 1px solid var(--rule); border-radius: 6px; field-sizing: content; max-height: 12rem; font: .84rem/1.4 ui-monospace, "DejaVu Sans Mono", monospace; }
.work { display: grid; gap: 1rem; grid-template-columns: minmax(0, 1fr); margin-top: .6rem; align-items: start; }
.bench { min-width: 0; }
.line-picture { position: relative; border: 1px solid var(--pause); border-radius: 6px; overflow: hidden; } .line-picture canvas { display: block; width: 100%; cursor: pointer; }
.line.waits { min-height: 10.4rem; border: 1px solid var(--pause); border-radius: 6px; }
button.piece { position: absolute; min-height: 0; padding: 0; background: none; border: 2px solid transparent; border-radius: 4px; } button.piece:hover { border-color: var(--ink); } button.piece[aria-pressed="true"] { background: none; border: 3px solid var(--ink); }
.line-controls { display: flex; flex-wrap: wrap; gap: .4rem .6rem; align-items: center; margin: .4rem 0; font-size: .88rem; } .line-controls input { flex: 1 1 8rem; } .line-controls button:first-child { min-width: 4.6rem; }
.clock { font-variant-numeric: tabular-nums; min-width: 12.5rem; text-align: right; color: var(--quiet); }
.brief { display: none; }
${answerStyle}
${fieldStyle}
.edit.with-text { display: grid; gap: 1rem; grid-template-columns: minmax(0, 1fr); }
.text-pane h2 { font-size: 1rem; margin: .6rem 0 0; } .editor { height: 30rem; border: 1px solid var(--rule); border-radius: 6px; overflow: hidden; }
.keep { display: flex; flex-wrap: wrap; gap: .5rem; align-items: center; } td:is(.acts-of-row, .none)::before { content: none !important; } .differs { display: block; font-size: .84rem; } input.name { width: 11rem; font-weight: 600; }
.starts { max-width: 70rem; } .starts h1 { font-size: 1.5rem; } .starts .cards { grid-template-columns: repeat(auto-fill, minmax(min(18rem, 100%), 1fr)); } .starts .cards p::first-letter { text-transform: uppercase; } .starts .cards p + p { margin-top: .5rem; } .starts ::file-selector-button { font: inherit; color: var(--accent); background: var(--paper); border: 1px solid var(--rule); border-radius: 6px; padding: .25rem .7rem; min-height: 2rem; cursor: pointer; } .starts input[type="file"] { max-width: 100%; font: inherit; font-size: .88rem; color: var(--ink); }
@media (min-width: 52rem) { .edit.with-text { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); } .edit.with-text .editor { z-index: 1; position: sticky; top: .5rem; height: min(80vh, 46rem); } }
@media (min-width: 68rem) {
  .work { grid-template-columns: minmax(0, 1fr) 26rem; gap: 1.4rem; }
  .answer.tried { position: sticky; top: .6rem; max-height: calc(100vh - 1.2rem); overflow-y: auto; }
}
@media (max-width: 67.99rem) {
  .brief { display: flex; flex-wrap: wrap; gap: 0 1rem; position: sticky; top: 0; z-index: 3; margin: .5rem -1rem 0; padding: .35rem 1rem; min-height: 3.4rem; align-content: center; background: var(--card); border-bottom: 1px solid var(--rule); font-variant-numeric: tabular-nums; font-size: .94rem; }
  .line.waits { min-height: 16.5rem; } .brief .difference { color: var(--quiet); font-size: .84rem; flex-basis: 100%; min-height: 0; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  html { scroll-padding-top: 4.5rem; }
  .copies-words { right: auto; left: 0; }
}
@media (pointer: coarse) { button, select, input[type="text"], .copies > summary { min-height: 2.6rem; } }
@media print { .tools, .line-controls, .chooser, .edit, .keep { display: none; } }
`
