/** Style rules of the replay, for the page that has one. */
export const replayStyle = `.replay { margin: 1rem 0; }
.replay-picture { border: 1px solid var(--pause, #e0e3e8); border-radius: 4px; }
.replay-picture canvas { display: block; width: 100%; }
.replay :focus-visible { outline: 3px solid var(--accent, #0072b2); outline-offset: 2px; }
.replay-controls { display: flex; flex-wrap: wrap; gap: .5rem; align-items: center; margin: .5rem 0; }
.replay-speeds { display: inline-flex; gap: .2rem; align-items: center; }
.replay button { font: inherit; color: var(--ink, #1c2430); background: var(--band, #f1f3f6); border: 1px solid var(--quiet, #55606e); border-radius: 4px; padding: .3rem .7rem; min-height: 2.2rem; cursor: pointer; }
.replay button[aria-pressed="true"] { background: var(--ink, #1c2430); color: var(--paper, #fff); font-weight: bold; }
.replay-clock { font-variant-numeric: tabular-nums; margin-left: auto; }
.replay input[type="range"] { width: 100%; margin: .4rem 0; accent-color: var(--accent, #0072b2); }
.replay-status { min-height: 3em; margin: .3rem 0; }
.replay-help { color: var(--quiet, #55606e); font-size: .88rem; margin: .3rem 0; }
@media print { .replay { display: none; } }
`
