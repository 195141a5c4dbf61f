/** Style of the first screen of a page. */
export const frontStyle = `.answer { margin: .7rem 0 0; } .question { color: var(--quiet); font-size: .95rem; margin: 0; max-width: none; } .question::first-letter { text-transform: uppercase; }
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
