/** Style of the answer beside the line: every figure has its place, so that nothing jumps while it changes. */
export const answerStyle = `.answer.tried { margin: 0; font-variant-numeric: tabular-nums; } .answer.tried.old :is(.looked .value, .looked .difference, .looked .word, .verdict, .verdict .word) { color: var(--quiet); font-style: italic; }
.answer.tried .verdict { font-size: 1.02rem; line-height: 1.4; } .answer.tried :is(.verdict, .problems) { min-height: 7.8rem; margin: 0 0 .5rem; } .problems h2 { font-size: 1.02rem; margin: .2rem 0; } .problems :is(li, p) { font-size: .9rem; line-height: 1.4; } .answer.tried .verdict .word { display: block; font-size: 1.45rem; line-height: 1.2; }
.looked { margin: 0; min-height: 24rem; border-top: 1px solid var(--rule); } .looked .tile { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 0 .6rem; align-items: baseline; background: none; border: 0; border-bottom: 1px solid var(--rule); border-radius: 0; padding: .3rem 0; }
.looked dt { color: var(--ink); font-size: .88rem; } .looked dd { margin: 0; } .looked .now { text-align: right; } .looked .value { font-size: 1.15rem; } .looked .unit, .looked .plus-minus { font-size: .84rem; }
.looked :is(.came, .difference) { font-size: .8rem; min-height: 1.5em; color: var(--quiet); } .looked :is(.came, .difference)::before { content: "\\200b"; } .looked .difference { text-align: right; color: var(--ink); } .looked .word { white-space: nowrap; }
.progress { min-height: 2.8em; margin: .4rem 0; }
.answer.tried .card { background: var(--card); border-left: 4px solid var(--rule); border-radius: 6px; padding: .4rem .8rem; margin-top: .5rem; } .answer.tried .card.error { border-left-color: var(--error); } .answer.tried .card.warning { border-left-color: var(--warning); }
.answer.tried .card h2 { font-size: .92rem; margin: 0; } .answer.tried .card p, .answer.tried .card .plain { font-size: .86rem; line-height: 1.4; margin: .1rem 0 0; } .answer.tried .card .plain { padding-left: 1.1rem; }
.findings { list-style: none; padding: 0; font-size: .92rem; } .findings li { padding: .4rem 0; border-bottom: 1px solid var(--rule); max-width: 60rem; }
`
