/** Texts that people read are plain English: none holds a word of the list in `avoided.ts`. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { avoided } from './avoided.js'
import { type Said, saidInCode, saidInMarkdown, saidInYaml } from './said.js'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Not rewritten yet: take a row out once it is, and the test holds it. A name that ends with a stroke is a folder. */
const notYet: readonly string[] = ['DEVELOPERS.md']

/** Texts that are no sentences but names that stay: headings and words of CSV files, purposes of streams of random numbers. */
const names: readonly (readonly [file: string, text: string])[] = [
  ['src/questions/size/csv.ts', 'draws not told'],
  ['src/questions/size/csv.ts', 'not told'],
  ['src/questions/validate/judged.ts', 'days drawn anew'],
]

const filesIn = (folder: string, ending: string): string[] =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith(ending) && !file.endsWith('.d.ts'))
    .map((file) => `${folder}/${file.split(path.sep).join('/')}`)
    .sort()

/** What is read of each sort of file. */
const sorts: readonly (readonly [files: readonly string[], said: (text: string) => Said[]])[] = [
  [filesIn('src', '.ts'), (text) => saidInCode(text)],
  [filesIn('src', '.tsx'), (text) => saidInCode(text, 'tsx')],
  [filesIn('scenarios', '.yaml'), saidInYaml],
  [['README.md', 'DEVELOPERS.md', ...filesIn('src/manual/texts', '.md')], saidInMarkdown],
]

const isNotYet = (file: string): boolean =>
  notYet.some((each) => (each.endsWith('/') ? file.startsWith(each) : file === each))

/** Every word of the list in these texts, with its place and what to write instead. */
const found = (file: string, said: readonly Said[]): string[] =>
  said
    .filter(({ text }) => !names.some(([of, name]) => of === file && name === text))
    .flatMap(({ line, text }) =>
      avoided.flatMap(({ words, instead }) => {
        const hit = words.exec(text.toLowerCase())?.[0]
        return hit === undefined ? [] : [`${file}:${line}: "${hit}" (instead: ${instead}) in: ${text.trim()}`]
      }),
    )

describe('a text for people', () => {
  it.each(sorts.map(([files, said]) => [files[0]!, files, said] as const))(
    'uses no word of the list: %s and others',
    (_, files, said) => {
      const texts = files
        .filter((file) => !isNotYet(file))
        .flatMap((file) => found(file, said(readFileSync(path.join(root, file), 'utf8'))))
      expect(texts).toEqual([])
    },
  )

  it('is listed as not rewritten only where there is such a file', () => {
    expect(notYet.filter((each) => !existsSync(path.join(root, each)))).toEqual([])
  })
})

describe('what is read', () => {
  it('of code are texts of two words or more, not names of files and of types', () => {
    const code = `import a from 'leave it'\ntype B = 'mend it'\nconst c = { d: 'one', e: \`two \${'three four'} five\` }\n`
    expect(saidInCode(code).map(({ text }) => text)).toEqual(['two $ five', 'three four'])
  })

  it('of YAML are comments, of Markdown what is not quoted', () => {
    expect(saidInYaml('a: 1 # why\n# more\nb: "#no"\n')).toEqual([
      { line: 1, text: ' why' },
      { line: 2, text: ' more' },
    ])
    expect(saidInMarkdown('One `two`.\n```sh\nthree\n```\nfour')).toEqual([
      { line: 1, text: 'One $.' },
      { line: 5, text: 'four' },
    ])
  })

  it('a word of the list is found with its place and what to write instead', () => {
    const [hit] = found('a.ts', saidInCode(`\nconst a = 'Mend the record first.'`))
    expect(hit).toBe('a.ts:2: "mend" (instead: fix, correct) in: Mend the record first.')
  })
})
