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

/** Writes each text once, below the names, versions and licences of the packages whose words it is. */
export function writeLicences(modules, file) {
  const folders = new Set(modules.filter((id) => id.includes('/node_modules/') && existsSync(id)).map(packageOf))
  const names = new Map()
  for (const folder of folders) {
    const { name, version, license } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
    const text = readdirSync(folder)
      .filter((each) => /^(licen[cs]e|notice|copying)/i.test(each))
      .sort()
      .map((each) => readFileSync(path.join(folder, each), 'utf8').trim())
      .join('\n\n')
    names.set(text, [...(names.get(text) ?? []), `${name} ${version}, ${license}`])
  }
  const parts = [...names].map(([text, of]) => `${of.sort().join('\n')}\n\n${text}`)
  writeFileSync(file, `${parts.sort().join(`\n\n${'-'.repeat(80)}\n\n`)}\n`)
}
