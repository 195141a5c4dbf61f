/** Style of tables: on a screen that is too narrow for them each row is a card. */
export const tableStyle = `.wide { overflow-x: auto; margin: .3rem 0 0; } table { border-collapse: collapse; min-width: min(100%, 40rem); font-variant-numeric: tabular-nums; font-size: .9rem; overflow-wrap: normal; }
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
