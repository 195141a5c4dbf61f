/** Style of the page to try a line in, upon that of the reports. */
import { answerStyle } from './style-answer.js'
import { fieldStyle } from './style-fields.js'

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
