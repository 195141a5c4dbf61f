/** The page as a file: policy by hash, nothing from outside, and scenario text that stays text. */
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { askedText } from '../../src/try/asked-text.js'
import { tryPage } from '../../src/try/page.js'
import { demo } from './demos.js'

const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

describe('the page', () => {
  const evil = {
    name: '</title><script>alert(1)</script>',
    text: 'title: </script><script>alert(2)</script>',
    files: {},
  }
  const page = tryPage(evil, [], 'const a = "</script>"; /* <!-- */')

  it('runs its own program alone, and workers that are made of it', () => {
    const [, policy] = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)!
    const [, program] = /<script>([\s\S]*?)<\/script>/.exec(page)!
    const [, looks] = /<style>([\s\S]*?)<\/style>/.exec(page)!
    expect(program).toBe('const a = "\\x3c/script>"; /* \\x3c!-- */')
    expect(policy!.split('; ')).toEqual([
      ...["default-src 'none'", `script-src ${hashOf(program!)}`, 'worker-src blob:'],
      ...[`style-src ${hashOf(looks!)}`, 'img-src data:', "base-uri 'none'", "form-action 'none'"],
    ])
  })

  it('holds a scenario as data: no name and no text of it is markup', () => {
    expect(page.match(/<script/g)).toHaveLength(2)
    const [, data] = /id="data">([\s\S]*?)<\/script>/.exec(page)!
    expect(JSON.parse(data!)).toMatchObject({ line: evil, starts: [] })
  })
})

describe('the text of what was asked for', () => {
  const { text } = demo('soap-works.yaml')
  it('has the values of options and of the variant, and is the file itself where nothing was asked', () => {
    expect(askedText(text, {})).toBe(text)
    expect(askedText(text, { set: ['tape.leg=60 mm'] })).toBe(text.replace('leg: 70 mm', 'leg: 60 mm'))
    expect(askedText(text, { shifts: 20, seed: 'a' })).toBe(
      text.replace('shifts: 200,', 'shifts: 20,').replace('seed: lindmoor', 'seed: a'),
    )
    expect(askedText(text, { variant: 'three-inch' })).toContain('tape: {width: 72 mm')
  })
})
