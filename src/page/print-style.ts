/** Style of the page on paper: light, folds open, pictures in place of charts, tables only where no chart shows the same. */
import { themes } from './theme.js'

export const printStyle = `@media print {
  :root { color-scheme: light; font-size: 8.5pt; ${themes.light} } @page { size: A4; margin: 12mm 12mm; } main { max-width: none; padding: 0; } .skip, .bar, .data, .screen-only, #replay { display: none; }
  details::details-content { content-visibility: visible; display: block; block-size: auto; } .fold { border: 0; } .fold > summary { padding: 3mm 0 .5mm; break-after: avoid; } .fold > summary::before { display: none; } .gist { display: none; } .fold > summary h2 { font-size: 11pt; } .inside { padding: 0; }
  h1 { font-size: 12pt; } h3, .note, .head { break-after: avoid; } h3 { margin-top: 3mm; } .verdict, .verdict.long { font-size: 12pt; } p, .plain { max-width: none; }
  .tiles { grid-auto-flow: column; grid-template-columns: none; } .value { font-size: 13pt; }
  table { font-size: 7.5pt; width: 100%; min-width: 0; } thead th { font-size: 7.5pt; } .many th { overflow-wrap: anywhere; } th, td, td.words, tbody th { padding: .45mm 1.2mm; min-width: 0; max-width: none; position: static; white-space: normal; } tbody th { overflow-wrap: break-word; } tbody td:not(.words) { white-space: normal; }
  tr, figure, .cards > div, .foremost, .tile { break-inside: avoid; } thead { display: table-header-group; } .wide, .box, .plan { overflow: visible; } .box { border: 0; padding: 0; } figure { margin: 2mm 0; }
  figure.drawn .head, figure.drawn .box canvas { display: none !important; } figure.drawn .box img, .box img { display: block; min-width: 0; max-width: 125mm; } figure.drawn .box { height: auto !important; }
  .cards > div, .cautions, .caution, .foremost, .tile, #repeat code { background: none; border: 1px solid var(--rule); } .plan svg { max-height: 48mm; } .moment svg { max-height: 88mm; }
}`
