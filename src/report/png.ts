/** Draws a chart into a PNG, with letters of its own: the machine need not have any. */
import { createRequire } from 'node:module'
import path from 'node:path'
import { GlobalFonts } from 'canvas'
import { ChartJSNodeCanvas } from 'chartjs-node-canvas'
import { type Chart, palette } from './charts/chart.js'

const fontName = 'DejaVu Sans'
const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

/** Makes the letters known to the canvas, which keeps them for the whole process. */
function registerFonts(): void {
  const folder = path.dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'))
  for (const file of fontFiles) GlobalFonts.registerFromPath(path.join(folder, 'ttf', file), fontName)
}

/** The chart as a PNG on white, `chart.width` by `chart.height` times the pixel ratio of its configuration. */
export function renderPng(chart: Chart): Buffer {
  registerFonts()
  const renderer = new ChartJSNodeCanvas({ width: chart.width, height: chart.height, backgroundColour: palette.paper })
  return renderer.renderToBufferSync(chart.config)
}
