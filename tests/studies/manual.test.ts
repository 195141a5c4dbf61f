/** Examples of the manual that take a minute or more: whole searches and validations. */
import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import { expect, it } from 'vitest'
import { fencesOf, files, root, textOf } from '../manual/examples.js'
import { follow, program } from '../manual/follow.js'

const slow = files.filter((file) => fencesOf(textOf(file)).some(({ marks }) => marks.includes('slow')))

it.each(slow)('%s: its slow examples run, and print what is quoted', (file) => follow(file, true), 900_000)

it('the manual says how much the sizing of the demo took', async () => {
  const flowing = (text: string) => text.replace(/[\s\u2009]+/g, ' ').trim()
  const argv = [program, 'size', 'scenarios/soap-works.yaml', '--no-files']
  const { stdout: out } = await promisify(execFile)('node', argv, { cwd: root })
  const [, designs, shifts] = /(\d+) of the [\d ]+ designs were simulated, with ([\d ]+) shifts in all/.exec(
    flowing(out),
  )!
  expect(flowing(textOf('src/manual/texts/how-many.md'))).toContain(
    `That took ${designs} designs and ${shifts!.trim()} shifts`,
  )
}, 900_000)
