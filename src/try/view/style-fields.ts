/** Style of the parts of the line and their fields. */
export const fieldStyle = `.chooser { display: flex; flex-wrap: wrap; gap: .4rem 1.2rem; margin: .6rem 0; padding: .5rem 0; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); }
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
