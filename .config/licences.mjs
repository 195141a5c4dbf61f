// The licences of what is bundled, in the words of those packages: their terms ask that they travel with the program.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** The package that a file belongs to. */
function packageOf(file) {
  let folder = path.dirname(file)
  const manifest = () => path.join(folder, 'package.json')
  const isPackage = () => existsSync(manifest()) && JSON.parse(readFileSync(manifest(), 'utf8')).name !== undefined
  while (!isPackage()) folder = path.dirname(folder)
  return folder
}

/** Terms that many packages have, each in one wording: where they begin and where they end. */
const terms = [
  ['the Apache License, version 2.0', /Apache License\s+Version 2\.0, January 2004[\s\S]*?END OF TERMS AND CONDITIONS/],
  ['the MIT License', /Permission is hereby granted, free of charge[\s\S]*?OTHER DEALINGS IN\s+THE\s+SOFTWARE\.?/],
]
const bare = (text) => text.replace(/\s+/g, ' ').replace(/\.$/, '')

/** Writes each text once, below the names, versions and licences of the packages whose words it is; terms that many share stand at the end. */
export function writeLicences(modules, file) {
  const folders = new Set(modules.filter((id) => id.includes('/node_modules/') && existsSync(id)).map(packageOf))
  const names = new Map()
  const shared = new Map()
  const withoutTerms = (text) =>
    terms.reduce((rest, [name, of]) => {
      const [words] = of.exec(rest) ?? []
      if (words === undefined) return rest
      if (!shared.has(name)) shared.set(name, words)
      return bare(shared.get(name)) === bare(words) ? rest.replace(words, `(Terms: ${name}, at the end.)`) : rest
    }, text)
  for (const folder of folders) {
    const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
    const text = readdirSync(folder)
      .filter((each) => /^(licen[cs]e|notice|copying)/i.test(each))
      .sort()
      .map((each) => withoutTerms(readFileSync(path.join(folder, each), 'utf8').trim()))
      .join('\n\n')
    names.set(text, [...(names.get(text) ?? []), `${name} ${version}, ${license}`])
  }
  const parts = [...names].map(([text, of]) => `${of.sort().join('\n')}\n\n${text}`)
  const ends = [...shared].map(([name, words]) => `Terms of ${name}\n\n${words}`)
  writeFileSync(file, `${[...parts.sort(), ...ends].join(`\n\n${'-'.repeat(80)}\n\n`)}\n`)
}
