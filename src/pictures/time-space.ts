/** Time-space diagram of a recorded stretch: every case's way along the line over time, as SVG that needs nothing else. */

import { type Display, printedUnit } from '../catalogue/printed-units.js'
import { grouped } from '../report/format.js'
import { shortened, wrapped } from '../report/marks/chart.js'
import { escaped } from '../report/markup.js'
import type { Stretch } from '../shifts/stretch.js'
import { findingOf, fullest, numbersOf } from './finding.js'
import type { Layout } from './layout.js'
import { type Move, motionOf } from './motion.js'
import { type Polyline, placeOn, simplified } from './polyline.js'
import { inks, stopInk, stopLooks } from './state-looks.js'
import { clockOf, lasting, type Stop, type StopKind, stopsOf, stopWords, waitsOf } from './stops.js'
import { px, rect, text } from './svg-parts.js'

interface TimeSpaceOptions {
  display?: Display
  /** Width of the drawing, px; the letters keep their size. */
  width?: number
  /** Begins the ids in the drawing, where a page has several. */
  id?: string
}

/** Room for names where the drawing is wide and where it is narrow, and at its right edge, px. */
const margin = { wide: 118, narrow: 92, right: 14 }
const narrow = 600
const between = 5
const leastBand = 20
/** Height that the bands together have if none of them is at its least, px. */
const bandsHeight = 430
const stripHeight = 16
const panelHeight = 84
/** Usual width of a letter, plain and bold, px. */
const letter = 6.3
const boldLetter = 7.2

/** A number stays in the line of its unit. */
const together = (words: string) => words.replace(/(\d) (?=(?:min|s|h)\b)/g, '$1\u00a0')

/** Where things are in the drawing. */
interface Frame {
  x: (time: number) => number
  left: number
  right: number
  /** Of each piece: upper edge, height, px per metre. */
  bands: { top: number; height: number; scale: number }[]
}

/** The whole diagram. Names may be any text. */
export function timeSpaceSvg(
  layout: Layout,
  stretch: Stretch,
  { display = 'metric', width = 960, id = 'time-space' }: TimeSpaceOptions = {},
): string {
  const { from, to } = stretch
  const [left, right] = [width < narrow ? margin.narrow : margin.wide, width - margin.right]
  const x = (time: number) =>
    left + ((Math.min(Math.max(time, from), to) - from) / (to - from)) * (right - left)
  const finding = findingOf(stretch, layout)
  const titleLines = wrapped(together(finding), Math.floor((width - 20) / 9.4))
  const subtitle = `Each line is a case on its way down the page; a level line is a case that stands. Shift ${stretch.shift}, ${lasting(to - from)}.`
  const subtitleLines = wrapped(together(subtitle), Math.floor((width - 20) / 6.8))
  let y = 8 + titleLines.length * 20 + subtitleLines.length * 16 + 12
  const strips = waitsOf(stretch).map((waits, source) => ({ waits, source }))
  const shown = strips.filter(({ source }) => stretch.sources[source]!.whenFull === 'wait').slice(0, 6)
  const stripTop = y
  y += shown.length * (stripHeight + 2) + 6
  const bandTop = y
  const scale = bandsHeight / layout.pieces.reduce((sum, { length }) => sum + length, 0)
  const bands = layout.pieces.map(({ length }) => {
    const height = Math.max(leastBand, length * scale)
    const band = { top: y, height, scale: length > 0 ? height / length : 0 }
    y += height + between
    return band
  })
  const bandBottom = y - between
  const frame: Frame = { x, left, right, bands }
  const panelTop = y + 22
  const panelBottom = panelTop + panelHeight
  const stops = stopsOf(stretch)
  const kinds = [...new Set(stops.map(({ kind }) => kind))]
  const legend = legendOf(id, stops, stretch, panelBottom + 50, width)
  const height = legend.bottom + 8
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${px(height)}" width="${width}" height="${px(height)}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="system-ui, 'DejaVu Sans', sans-serif" font-size="12">`,
    `<title id="${id}-title">${escaped(finding)}</title>`,
    `<desc id="${id}-desc">${escaped(numbersOf(stretch, layout))}</desc>`,
    patterns(id, kinds),
    `<rect width="${width}" height="${px(height)}" fill="${inks.paper}"/>`,
    ...titleLines.map((line, index) => text(10, 24 + index * 20, line, { size: 16, weight: 'bold' })),
    ...subtitleLines.map((line, index) =>
      text(10, 8 + titleLines.length * 20 + 18 + index * 16, line, { quiet: true }),
    ),
    ...shown.map(({ waits, source }, index) =>
      waitStrip(stretch.sources[source]!.name, waits, stripTop + index * (stripHeight + 2), frame, id),
    ),
    ...bands.map(({ top, height: tall }) => rect(left, top, right - left, tall, inks.band)),
    ...stretch.breaks.map(([begin, end]) =>
      rect(x(begin), bandTop, x(end) - x(begin), panelBottom - bandTop, inks.pause),
    ),
    timeAxis(stretch, frame, bandTop, panelBottom),
    ...stops.map((stop) => stopBar(stop, frame, id)),
    ...layout.pieces.map((_, piece) => blockedEdge(stretch, piece, frame)),
    casePaths(motionOf(stretch, layout), stretch, frame),
    ...layout.pieces.map(({ name, length }, piece) => bandName(name, length, frame, piece, display)),
    ...stopLabels(stops, frame),
    ...stretch.breaks
      .filter(([begin, end]) => x(end) - x(begin) > 40)
      .map(([begin, end]) =>
        text((x(begin) + x(end)) / 2, bandTop + 14, 'break', { anchor: 'middle', halo: true }),
      ),
    width < narrow ? '' : travelArrow(bandTop, bandBottom),
    heldPanel(stretch, frame, panelTop, panelBottom),
    text((left + right) / 2, panelBottom + 34, 'time since the start of the shift, h:min', {
      anchor: 'middle',
      quiet: true,
    }),
    legend.drawn,
    '</svg>',
  ]
  return parts.filter((part) => part !== '').join('\n')
}

const patterns = (id: string, kinds: readonly StopKind[]) =>
  `<defs>${kinds
    .map(
      (kind) =>
        `<pattern id="${id}-${kind}" width="8" height="8" patternUnits="userSpaceOnUse"><path d="${stopLooks[kind].hatch}" fill="none" stroke="${stopInk(kind)}" stroke-width="1.6"/></pattern>`,
    )
    .join(
      '',
    )}<pattern id="${id}-wait" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="1.1" fill="${inks.ink}"/></pattern></defs>`

function waitStrip(
  name: string,
  waits: [number, number][],
  top: number,
  { x, left, right }: Frame,
  id: string,
): string {
  return [
    text(left - 8, top + 12, `${shortened(name, Math.floor((left - 8) / letter) - 6)} waits`, {
      anchor: 'end',
      size: 11,
    }),
    rect(left, top, right - left, stripHeight, 'none', ` stroke="${inks.pause}"`),
    ...waits.map(([begin, end]) =>
      rect(
        x(begin),
        top,
        Math.max(0.8, x(end) - x(begin)),
        stripHeight,
        `url(#${id}-wait)`,
        ` stroke="${inks.ink}" stroke-width="0.8"`,
      ),
    ),
  ].join('')
}

/** Waiting for crew lies lighter, with a broken edge; work has the full hatch. */
function stopBar({ piece, kind, from, workFrom, to }: Stop, { x, bands }: Frame, id: string): string {
  const { top, height } = bands[piece]!
  const edge = (dash: string) => ` stroke="${stopInk(kind)}" stroke-width="1"${dash}`
  const bar = (begin: number, end: number, isWork: boolean) =>
    end > begin
      ? rect(
          x(begin),
          top,
          x(end) - x(begin),
          height,
          stopInk(kind),
          ` fill-opacity="${isWork ? 0.18 : 0.07}"`,
        ) +
        rect(
          x(begin),
          top,
          x(end) - x(begin),
          height,
          `url(#${id}-${kind})`,
          `${isWork ? '' : ' fill-opacity="0.4"'}${edge(isWork ? '' : ' stroke-dasharray="3 2"')}`,
        )
      : ''
  return bar(from, workFrom, false) + bar(workFrom, to, true)
}

/** Words at each stop: in its bar, or beside it where the bar is short and nothing else stands there. */
function stopLabels(stops: readonly Stop[], { x, bands, right }: Frame): string[] {
  const labels: string[] = []
  const taken = new Map<number, number>()
  for (const [index, stop] of stops.entries()) {
    const { top, height } = bands[stop.piece]!
    const next = stops.slice(index + 1).find(({ piece }) => piece === stop.piece)
    const begin = Math.max(x(stop.from) + 4, taken.get(stop.piece) ?? 0)
    const room = Math.min(next ? x(next.from) : right, right) - begin
    const { name } = stopWords[stop.kind]
    const words = [`${name} ${lasting(stop.to - stop.from)}`, name].find(
      (each) => each.length * boldLetter <= room,
    )
    if (words === undefined) continue
    taken.set(stop.piece, begin + words.length * boldLetter + 6)
    labels.push(
      text(begin, top + Math.min(16, height / 2 + 4), words, { size: 11, weight: 'bold', halo: true }),
    )
  }
  return labels
}

/** A bar along the far edge of a piece while it is blocked ahead. */
function blockedEdge({ states, from, to }: Stretch, piece: number, { x, bands }: Frame): string {
  const { top, height } = bands[piece]!
  const all = states[piece]!
  const d = all.flatMap(([begin, state], index) => {
    const end = all[index + 1]?.[0] ?? to
    if (state !== 'blocked' || end <= from || begin >= to || x(end) - x(begin) < 0.3) return []
    return [`M${px(x(begin))} ${px(top + height - 1.5)}H${px(x(end))}`]
  })
  return d.length === 0
    ? ''
    : `<path d="${d.join('')}" fill="none" stroke="${inks.accent}" stroke-width="3"/>`
}

function bandName(
  name: string,
  length: number,
  { left, bands }: Frame,
  piece: number,
  display: Display,
): string {
  const { factor, word } = printedUnit('m', display)
  const { top, height } = bands[piece]!
  const middle = top + height / 2
  const isTall = height >= 34
  const x = left - 8
  // beside the words of the direction, which a narrow drawing goes without
  const most = Math.floor((x - (left === margin.narrow ? 2 : 16)) / boldLetter)
  return (
    text(x, middle + (isTall ? -2 : 4), shortened(name, most), { anchor: 'end', weight: 'bold' }) +
    (isTall
      ? text(x, middle + 13, `${grouped(length * factor, 1)} ${word}`, {
          anchor: 'end',
          quiet: true,
          size: 11,
        })
      : '')
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

function timeAxis(stretch: Stretch, { x, left, right }: Frame, top: number, bottom: number): string {
  const step = tickOf(stretch, right - left)
  const parts: string[] = []
  for (let time = Math.ceil(stretch.from / step) * step; time <= stretch.to; time += step)
    parts.push(
      `<path d="M${px(x(time))} ${px(top)}V${px(bottom + 4)}" stroke="${inks.quiet}" stroke-opacity="0.25"/>`,
      text(x(time), bottom + 17, clockOf(time, step < 60), { anchor: 'middle', quiet: true, size: 11 }),
    )
  return parts.join('')
}

/** Every case as one thin line: from piece to piece where the next one lies below, else begun anew. */
function casePaths(
  moves: readonly Move[],
  { from, cases }: Stretch,
  { x, left, right, bands }: Frame,
): string {
  // the closer the lines stand, the finer they are, so that there is paper between them
  const stroke = Math.min(0.9, 0.35 + (0.15 * (right - left)) / cases.length)
  const lines: string[] = cases.map(() => '')
  const ends: [number, number][] = []
  for (const { item, piece, before, times, places } of moves) {
    const { top, scale } = bands[piece]!
    const seen = since(from, times, places)
    if (seen.times.length === 0) continue
    const { times: across, places: down } = simplified(
      { times: seen.times.map(x), places: seen.places.map((place) => top + place * scale) },
      0.4,
    )
    const isOn = before === piece - 1 && lines[item] !== ''
    const last: [number, number] = isOn ? ends[item]! : [tenths(across[0]!), tenths(down[0]!)]
    if (!isOn) lines[item] += `M${last[0] / 10} ${last[1] / 10}`
    for (const [corner, at] of across.entries()) lines[item] += step(last, at, down[corner]!)
    ends[item] = last
  }
  const paths = lines.filter((line) => line !== '').map((line) => `<path d="${line}"/>`)
  return `<g fill="none" stroke="${inks.ink}" stroke-width="${stroke.toFixed(2)}" stroke-linejoin="round">${paths.join('')}</g>`
}

/** A place in tenths of a pixel. */
const tenths = (place: number) => Math.round(place * 10)

/** The way to a point from `last`, which is in tenths of a pixel: relative and short, for there are thousands. */
function step(last: [number, number], x: number, y: number): string {
  const [across, down] = [tenths(x), tenths(y)]
  const [by, deep] = [(across - last[0]) / 10, (down - last[1]) / 10]
  last[0] = across
  last[1] = down
  return by === 0 && deep === 0 ? '' : deep === 0 ? `h${by}` : by === 0 ? `v${deep}` : `l${by} ${deep}`
}

/** What of a path lies after `from`. */
function since(from: number, times: Float64Array, places: Float64Array): Polyline {
  const first = times.findIndex((time) => time >= from)
  if (first < 0) return { times: [], places: [] }
  const seen = { times: [...times.subarray(first)], places: [...places.subarray(first)] }
  if (first > 0 && times[first]! > from) {
    seen.times.unshift(from)
    seen.places.unshift(placeOn(times, places, from))
  }
  return seen
}

function heldPanel(stretch: Stretch, { x, left, right }: Frame, top: number, bottom: number): string {
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
      {
        anchor: isLeft ? 'end' : 'start',
        weight: 'bold',
        size: 11,
        halo: true,
      },
    ),
  ].join('')
}

/** Keys of the hatches that occur, in rows that fit. */
function legendOf(id: string, stops: readonly Stop[], { states }: Stretch, top: number, width: number) {
  const kinds = [...new Set(stops.map(({ kind }) => kind))]
  const isBlocked = states.some((all) => all.some(([, state]) => state === 'blocked'))
  const box = (fill: string, more: string) => (x: number, y: number) => rect(x, y, 20, 12, fill, more)
  const entries: { words: string; draw: (x: number, y: number) => string }[] = kinds.map((kind) => ({
    words: stopWords[kind].one.replace(/^An? /, ''),
    draw: box(`url(#${id}-${kind})`, ` stroke="${stopInk(kind)}"`),
  }))
  const kind = stops.find(({ from, workFrom }) => workFrom > from)?.kind
  if (kind)
    entries.push({
      words: 'lighter, broken edge: waiting for crew',
      draw: box(
        `url(#${id}-${kind})`,
        ` fill-opacity="0.4" stroke="${stopInk(kind)}" stroke-dasharray="3 2"`,
      ),
    })
  if (isBlocked)
    entries.push({
      words: 'blocked ahead',
      draw: (x, y) => `<path d="M${px(x)} ${px(y + 9)}h20" stroke="${inks.accent}" stroke-width="3"/>`,
    })
  let [x, y] = [10, top]
  const drawn = entries.map(({ words, draw }) => {
    const needed = 28 + words.length * letter + 18
    if (x > 10 && x + needed > width) {
      x = 10
      y += 20
    }
    const part = draw(x, y) + text(x + 26, y + 10, words, { size: 11 })
    x += needed
    return part
  })
  return { drawn: drawn.join(''), bottom: entries.length > 0 ? y + 16 : top - 10 }
}
