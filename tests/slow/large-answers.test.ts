/** Large answers: their pages stay small enough to be sent, and the program within a bound of memory. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { smallLine } from '../cli/in-process.js'

const program = fileURLToPath(new URL('../../.build/cli/main.js', import.meta.url))
const cwd = mkdtempSync(path.join(tmpdir(), 'tapeshift-large-'))

/** What mail takes without a word. */
const mostOfPage = 5e6

/** Says at its end how much memory the process had at most, kB. */
const telling = `data:text/javascript,${encodeURIComponent(
  'process.on("exit",()=>process.stderr.write("peak "+process.resourceUsage().maxRSS+"\\n"))',
)}`

/** Runs the program; what its page weighs, bytes, and its memory at most, MB. */
function measured(command: string, scenario: string, ...more: string[]) {
  const flags = ['--max-old-space-size=1500', '--import', telling]
  const asked = [command, scenario, '--workers', '1', '--quiet', '--anyway', '--out', command, ...more]
  const { status, stderr } = spawnSync('node', [...flags, program, ...asked], { cwd, encoding: 'utf8' })
  expect(status, stderr).toBe(0)
  const file = path.join(cwd, command, 'report.html')
  const peak = Number(/peak (\d+)/.exec(stderr)?.[1]) / 1000
  return { page: statSync(file).size, text: readFileSync(file, 'utf8'), peak }
}

describe('large answers', () => {
  it('200 variants: a page under 5 MB that says what it draws', () => {
    const variants = Array.from(
      { length: 200 },
      (_, n) => `  v${n}: {set: {line.infeed.length: ${4 + n / 50} m}}`,
    )
    writeFileSync(path.join(cwd, 'variants.yaml'), `${smallLine}variants:\n${variants.join('\n')}\n`)
    const { page, text, peak } = measured('compare', 'variants.yaml', '--shifts', '20')
    expect(page).toBeLessThan(mostOfPage)
    expect(text).toContain('Drawn: the 23 of 200 variants that rank first; the table has all.')
    // all designs stand in the tables
    expect(text).toContain('>v199<')
    // some 330 MB on two cores, of which a run of a small line takes 180 too; 460 when all rows were turned into text at once, and what
    // was done with might be three times what is in use
    expect(peak).toBeLessThan(430)
  })

  it('500 pieces: a page under 5 MB that says that there is no replay', () => {
    const pieces = Array.from(
      { length: 250 },
      (_, n) => `  c${n}: {type: conveyor, length: 3 m}\n  s${n}: {type: station, time: 3 s}\n`,
    )
    const long = smallLine.replace(/line:\n[\s\S]*shift:/, `line:\n${pieces.join('')}shift:`)
    writeFileSync(path.join(cwd, 'long.yaml'), long)
    const { page, text, peak } = measured('run', 'long.yaml', '--shifts', '4')
    expect(page).toBeLessThan(mostOfPage)
    expect(text).toContain('There is no replay here: with 500 pieces it would make the page too large.')
    expect(text).toContain('Drawn: the 24 of 500 machines that are stopped most; the table has all.')
    // some 390 MB on two cores; 950 when all paths of the picture were held with room to grow
    expect(peak).toBeLessThan(550)
  })
})
