/** Draws charts into PNGs, with letters of its own: the machine need not have any. */
import { createRequire } from 'node:module'
import path from 'node:path'
// what draws draws on this canvas, which encodes a picture beside the thread that draws the next
import type { createCanvas as plainCanvas } from 'canvas'
import { createCanvas, GlobalFonts } from 'canvas/node-canvas.js'
import { ChartJSNodeCanvas } from 'chartjs-node-canvas'
import { inOrder } from '../shifts/lanes.js'
import type { Chart, Picture } from './marks/chart.js'
import { palette } from './marks/inks.js'
import { ownFont } from './marks/letters.js'

const fontFiles = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf']

/** Makes the letters known to the canvas, which keeps them for the whole process. */
function registerFonts(): void {
  if (GlobalFonts.has(ownFont)) return
  const folder = path.dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'))
  for (const name of fontFiles) {
    const file = path.join(folder, 'ttf', name)
    if (!GlobalFonts.registerFromPath(file, ownFont))
      throw new Error(`the font is missing: cannot read ${file}`)
  }
}

/** Wider and higher than any picture, CSS pixels: the paper under all of it. */
const paper = 100_000

/** One renderer for pictures of all sizes: each that is made reads the whole of Chart.js anew. */
class Renderer extends ChartJSNodeCanvas {
  private size = { width: 0, height: 0 }

  constructor() {
    super({ width: paper, height: paper, backgroundColour: palette.paper })
  }

  // the renderer asks for a canvas of its own size
  protected override readonly _createCanvas = (() =>
    createCanvas(this.size.width, this.size.height)) as unknown as typeof plainCanvas

  draw({ width, height, config }: Chart): Promise<Buffer> {
    this.size = { width, height }
    return this.renderToBuffer(config)
  }
}

const renderer = new Renderer()

/**
 * The chart as a PNG on white, `chart.width` by `chart.height` times the pixel ratio of its configuration. It is drawn when
 * this is called and encoded while others are.
 */
export async function renderPng(chart: Chart): Promise<Buffer> {
  registerFonts()
  return renderer.draw(chart)
}

/** Pictures in hand: one is drawn while the other is encoded. Each takes its size in memory, some tens of megabytes. */
const inHand = 2

/** The pictures of charts, in their order. */
export function renderAll(charts: readonly Chart[]): Promise<Picture[]> {
  return inOrder(charts.length, inHand, async (number) => {
    const chart = charts[number]!
    const png = await renderPng(chart)
    return { chart, png, inBase64: () => png.toString('base64') }
  })
}
