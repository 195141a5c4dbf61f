/** The style of the manual's page: light and dark, on a screen of any width and on paper. */

const light =
  '--ink: #1c2430; --paper: #ffffff; --quiet: #55606e; --accent: #0068a3; --rule: #d5dae0; --card: #f3f5f7;'
const dark =
  '--ink: #e8ebef; --paper: #14181d; --quiet: #a5afba; --accent: #56b4e9; --rule: #39424c; --card: #1e242b;'

export const style = `:root { color-scheme: light dark; ${light} }
@media (prefers-color-scheme: dark) { :root { ${dark} } }
* { box-sizing: border-box; }
html { scroll-padding-top: 1rem; -webkit-text-size-adjust: 100%; }
body { font: 1rem/1.55 system-ui, "DejaVu Sans", sans-serif; color: var(--ink); background: var(--paper); margin: 0 auto; max-width: 46rem; padding: 1.5rem 1rem 4rem; overflow-wrap: anywhere; }
a { color: var(--accent); } :focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.skip { position: absolute; left: -100rem; padding: .5rem 1rem; background: var(--paper); z-index: 2; } .skip:focus { left: .5rem; top: .5rem; }
h1 { font-size: 1.6rem; margin: 0; } .subtitle, .label, #count { color: var(--quiet); font-size: .9rem; margin: 0; }
h2 { font-size: 1.35rem; line-height: 1.25; margin: 3rem 0 .6rem; padding-top: .9rem; border-top: 1px solid var(--rule); } h3 { font-size: 1.05rem; margin: 1.8rem 0 .4rem; } h4 { font-size: 1rem; margin: 1.2rem 0 .3rem; }
p { margin: .6rem 0; } li { margin: .3rem 0; } ul, ol { padding-left: 1.4rem; } code { font-size: .9em; }
pre { background: var(--card); border-radius: 6px; padding: .7rem .9rem; overflow-x: auto; overflow-wrap: normal; font-size: .88rem; line-height: 1.45; } pre code { font-size: 1em; }
blockquote { margin: 1rem 0; padding: .1rem 1rem; border-left: 4px solid var(--accent); background: var(--card); border-radius: 0 6px 6px 0; }
.wide { overflow-x: auto; } table { border-collapse: collapse; font-size: .92rem; overflow-wrap: normal; } th, td { text-align: left; vertical-align: top; padding: .4rem .8rem .4rem 0; border-bottom: 1px solid var(--rule); min-width: 6rem; overflow-wrap: anywhere; } th { color: var(--quiet); font-weight: 600; }
nav { margin: 1.4rem 0 0; font-size: .94rem; } nav ul, nav ol { list-style: none; padding: 0; margin: .2rem 0; } .contents > li { margin: 0 0 1rem; } .contents li li { margin: 0; } .contents a { display: inline-block; padding: .22rem 0; }
#search { margin: 0 0 1.2rem; } #search label { display: block; font-weight: 600; } #sought { width: 100%; font: inherit; padding: .5rem .6rem; border: 1px solid var(--quiet); border-radius: 6px; color: inherit; background: var(--paper); }
#hits { max-height: 50vh; overflow-y: auto; } #hits li { margin: .5rem 0; } #hits a { font-weight: 600; } #hits span { display: block; font-size: .88rem; color: var(--quiet); }
.found { outline: 2px solid var(--accent); outline-offset: 4px; border-radius: 3px; }
@media (min-width: 64rem) {
  body { max-width: 68rem; display: grid; grid-template-columns: 17rem minmax(0, 46rem); column-gap: 3rem; } header { grid-column: 1 / -1; } .skip { grid-column: 1; }
  nav { align-self: start; position: sticky; top: 1rem; max-height: calc(100vh - 2rem); overflow-y: auto; padding: 0 .5rem .5rem .2rem; }
}
@media print {
  :root { color-scheme: light; font-size: 9.5pt; ${light} } @page { margin: 16mm 14mm; } body { display: block; max-width: none; padding: 0; } .skip, #search { display: none; } nav { max-height: none; }
  .contents { columns: 2; } .contents > li { break-inside: avoid; } h2, h3, h4 { break-after: avoid; } pre, blockquote, tr { break-inside: avoid; } pre { white-space: pre-wrap; background: none; border: 1px solid var(--rule); } .wide, pre { overflow: visible; } a { color: inherit; text-decoration: none; }
}
`
