// How soon the page to try a line in answers in chromium: from a change to its first figures, and to 200 shifts; and what memory is left after many changes.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium } from 'playwright-core'

const changes = process.env.BENCH_BRIEF === '1' ? 2 : 15

/** Keeps when the page was told figures, and of how many shifts. */
const listen = () => {
  const Plain = Worker
  window.told = []
  window.Worker = class extends Plain {
    constructor(...given) {
      super(...given)
      this.addEventListener('message', ({ data }) => {
        if (data?.what === 'figures') window.told.push([performance.now(), data.shifts, data.number])
      })
    }
  }
}

const folder = mkdtempSync(path.join(tmpdir(), 'tapeshift-bench-'))
process.on('exit', () => rmSync(folder, { recursive: true, force: true }))
const { status, stderr } = spawnSync('node', ['.build/cli/main.js', 'try', 'scenarios/soap-works.yaml', '--out', folder], {
  encoding: 'utf8',
})
if (status !== 0) throw new Error(stderr)

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--enable-precise-memory-info', '--js-flags=--expose-gc'],
})
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
await page.addInitScript(listen)
await page.goto(`file://${folder}/try.html`)

const until = async (shifts, after) => {
  for (;;) {
    const at = await page.evaluate(
      ([least, from]) => window.told.find(([time, count]) => time > from && count >= least)?.[0],
      [shifts, after],
    )
    if (at !== undefined) return at
    await page.waitForTimeout(20)
  }
}
const opened = await until(20, 0)
await until(200, 0)
const heap = () =>
  page.evaluate(() => {
    gc()
    return performance.memory.usedJSHeapSize / 1e6
  })
const before = await heap()

await page.getByRole('button', { name: 'sealer', exact: true }).first().click()
const speed = page.locator('[data-path="line.sealer.belt-speed"] input').first()
const first = []
const enough = []
for (let change = 0; change < changes; change++) {
  const from = await page.evaluate(() => performance.now())
  await speed.fill(String(15 + (change % 10)))
  first.push((await until(20, from)) - from)
  enough.push((await until(200, from)) - from)
}
const told = (times) => {
  const sorted = times.toSorted((a, b) => a - b)
  return `${Math.round(sorted[Math.floor(sorted.length / 2)])} ms (${Math.round(sorted[0])} to ${Math.round(sorted.at(-1))})`
}
console.log(`\nThe page to try a line in, soap-works, ${changes} changes of the belt speed, median (least to most)`)
console.log(`  opened to first figures      ${Math.round(opened)} ms`)
console.log(`  change to first figures      ${told(first)}`)
console.log(`  change to 200 shifts         ${told(enough)}`)
console.log(`  memory of the page           ${before.toFixed(1)} MB, after the changes ${(await heap()).toFixed(1)} MB`)
await browser.close()
