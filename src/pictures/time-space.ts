/** Time-space diagram of a recorded stretch: every case's way along the line over time, as SVG that needs nothing else. */

import { type Display, printedUnit } from '../catalogue/printed-units.js'
import { grouped } from '../report/format.js'
import { shortened } from '../report/marks/breaking.js'
import { inks } from '../report/marks/inks.js'
import { pageLetterWidth } from '../report/marks/letters.js'
import { escaped } from '../report/markup.js'
import type { Stretch } from '../shifts/stretch.js'
import { fullest, numbersOf } from './finding.js'
import type { Layout } from './layout.js'
import { clockOf } from './stops.js'
import { px, rect, text } from './svg-parts.js'
import { casePaths } from './time-space-cases.js'
import { type Frame, frameOf } from './time-space-frame.js'
import { blockedEdges, legendOf, patterns, stopBars, stopLabels, waitStrips } from './time-space-stops.js'

interface TimeSpaceOptions {
  display?: Display
  /** Width of the drawing, px; the letters keep their size. */
  width?: number
  /** Begins the ids in the drawing, where a page has several. */
  id?: string
}

/** The whole diagram. Names may be any text. */
export function timeSpaceSvg(
  layout: Layout,
  stretch: Stretch,
  { display = 'metric', width = 960, id = 'time-space' }: TimeSpaceOptions = {},
): string {
  const frame = frameOf(layout, stretch, width, id)
  const { x, left, right, title, subtitle, bands, all, panel } = frame
  const legend = legendOf(frame, panel.bottom + 50)
  const height = legend.bottom + 8
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${px(height)}" width="${width}" height="${px(height)}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="system-ui, 'DejaVu Sans', sans-serif" font-size="12">`,
    `<title id="${id}-title">${escaped(frame.finding)}</title>`,
    `<desc id="${id}-desc">${escaped(numbersOf(stretch, layout))}</desc>`,
    patterns(frame),
    `<rect width="${width}" height="${px(height)}" fill="${inks.paper}"/>`,
    ...title.map((line, index) => text(10, 24 + index * 20, line, { size: 16, weight: 'bold' })),
    ...subtitle.map((line, index) => text(10, 26 + title.length * 20 + index * 16, line, { quiet: true })),
    ...waitStrips(frame),
    ...bands.map(({ top, height: tall }) => rect(left, top, right - left, tall, inks.band)),
    ...stretch.breaks.map(([begin, end]) =>
      rect(x(begin), all.top, x(end) - x(begin), panel.bottom - all.top, inks.pause),
    ),
    timeAxis(frame),
    ...stopBars(frame),
    ...blockedEdges(frame),
    casePaths(frame),
    ...layout.pieces.map((_, piece) => bandName(piece, frame, display)),
    ...stopLabels(frame),
    ...stretch.breaks
      .filter(([begin, end]) => x(end) - x(begin) > 40)
      .map(([begin, end]) =>
        text((x(begin) + x(end)) / 2, all.top + 14, 'break', { anchor: 'middle', halo: true }),
      ),
    frame.isNarrow ? '' : travelArrow(all.top, all.bottom),
    heldPanel(frame),
    text((left + right) / 2, panel.bottom + 34, 'time since the start of the shift, h:min', {
      anchor: 'middle',
      quiet: true,
    }),
    legend.drawn,
    '</svg>',
  ]
  return parts.filter((part) => part !== '').join('\n')
}

/** Name and length of a piece before its band. */
function bandName(piece: number, { layout, left, bands, isNarrow }: Frame, display: Display): string {
  const { name, length } = layout.pieces[piece]!
  const { factor, word } = printedUnit('m', display)
  const { top, height } = bands[piece]!
  const middle = top + height / 2
  const isTall = height >= 34
  const x = left - 8
  // beside the words of the direction, which a narrow drawing goes without
  const most = Math.floor((x - (isNarrow ? 2 : 16)) / pageLetterWidth.bold)
  const look = { anchor: 'end', quiet: true, size: 11 } as const
  return (
    text(x, middle + (isTall ? -2 : 4), shortened(name, most), { anchor: 'end', weight: 'bold' }) +
    (isTall ? text(x, middle + 13, `${grouped(length * factor, 1)} ${word}`, look) : '')
  )
}

const travelArrow = (top: number, bottom: number) => {
  const y = (top + bottom) / 2
  return `<g transform="rotate(90 9 ${px(y)})">${text(9, y + 3, 'direction of travel →', { anchor: 'middle', quiet: true, size: 11 })}</g>`
}

/** Distance of the marks of the time axis: the least that leaves room for its letters, s. */
function tickOf({ from, to }: Stretch, width: number): number {
  const least = ((to - from) / width) * 62
  return [10, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200].find((step) => step >= least) ?? 14400
}

function timeAxis({ stretch, x, left, right, all, panel }: Frame): string {
  const step = tickOf(stretch, right - left)
  const parts: string[] = []
  for (let time = Math.ceil(stretch.from / step) * step; time <= stretch.to; time += step)
    parts.push(
      `<path d="M${px(x(time))} ${px(all.top)}V${px(panel.bottom + 4)}" stroke="${inks.quiet}" stroke-opacity="0.25"/>`,
      text(x(time), panel.bottom + 17, clockOf(time, step < 60), { anchor: 'middle', quiet: true, size: 11 }),
    )
  return parts.join('')
}

function heldPanel({ stretch, x, left, right, panel: { top, bottom } }: Frame): string {
  const most = fullest(stretch)
  const ceiling = Math.max(1, most.count)
  const y = (count: number) => bottom - (count / ceiling) * (bottom - top - 16)
  const steps = stretch.held.map(
    ([time, count], index) =>
      `${index === 0 ? 'M' : 'H'}${px(x(time))}${index === 0 ? ' ' : 'V'}${px(y(count))}`,
  )
  const line = `${steps.join('')}H${px(right)}`
  const at = x(most.time)
  const isLeft = at > (left + right) / 2
  return [
    text(left - 8, bottom - (bottom - top) / 2 + 4, 'cases in line', { anchor: 'end', size: 11 }),
    text(left - 8, bottom, '0', { anchor: 'end', quiet: true, size: 11 }),
    `<path d="${line}V${px(bottom)}H${px(left)}Z" fill="${inks.accent}" fill-opacity="0.15"/>`,
    `<path d="${line}" fill="none" stroke="${inks.accent}" stroke-width="1.6"/>`,
    `<path d="M${left} ${px(bottom)}H${right}" stroke="${inks.quiet}"/>`,
    `<circle cx="${px(at)}" cy="${px(y(most.count))}" r="3.5" fill="${inks.accent}"/>`,
    text(
      at + (isLeft ? -7 : 7),
      y(most.count) - 4,
      `${most.count} ${most.count === 1 ? 'case' : 'cases'} at ${clockOf(most.time)}`,
      { anchor: isLeft ? 'end' : 'start', weight: 'bold', size: 11, halo: true },
    ),
  ].join('')
}
