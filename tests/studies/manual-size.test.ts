/** The manual quotes what a sizing of the demo prints: the whole search, which takes a minute or more. */
import { execFile } from 'node:child_process'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

it('the manual quotes the sizing of the demo, and how much it took', async () => {
  const guide = readFileSync(path.join(root, 'src/manual/texts/how-many.md'), 'utf8')
  const [, quotation] = /^tapeshift size scenarios\/soap-works.yaml$[\s\S]*?```text\n([\s\S]*?)```/m.exec(
    guide,
  )!
  const flowing = (text: string) => text.replace(/[\s\u2009]+/g, ' ').trim()
  const program = path.join(root, '.build/cli/main.js')
  const argv = [program, 'size', 'scenarios/soap-works.yaml', '--no-files']
  const { stdout: out } = await promisify(execFile)('node', argv, { cwd: root })
  expect(flowing(out)).toContain(flowing(quotation!))
  const [, shifts, designs] = /([\d ]+) shifts of (\d+) of the [\d ]+ designs were simulated/.exec(
    flowing(out),
  )!
  expect(flowing(guide)).toContain(`That took ${designs} designs and ${shifts!.trim()} shifts`)
}, 900_000)
