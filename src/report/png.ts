/** Draws a chart into a PNG, with letters of its own: the machine need not have any. */
import { createRequire } from 'node:module'
import path from 'node:path'
import { GlobalFonts } from 'canvas'
import { ChartJSNodeCanvas } from 'chartjs-node-canvas'
import { type Chart, ownFont, palette } from './charts/chart.js'

const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

/** Makes the letters known to the canvas, which keeps them for the whole process. */
function registerFonts(): void {
  if (GlobalFonts.has(ownFont)) return
  const folder = path.dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'))
  for (const name of fontFiles) {
    const file = path.join(folder, 'ttf', name)
    if (!GlobalFonts.registerFromPath(file, ownFont))
      throw new Error(`no letters to draw with: cannot read ${file}`)
  }
}

/**
 * The chart as a PNG on white, `chart.width` by `chart.height` times the pixel ratio of its configuration. A
 * renderer serves one size and is soon made, so each picture has its own.
 */
export function renderPng(chart: Chart): Buffer {
  registerFonts()
  const { width, height } = chart
  return new ChartJSNodeCanvas({ width, height, backgroundColour: palette.paper }).renderToBufferSync(
    chart.config,
  )
}
