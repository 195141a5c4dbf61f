// Types of the public face into `.build/types`: what `src/node.ts` leads to, and no more.
import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

const at = (name) => fileURLToPath(new URL(`../${name}`, import.meta.url))
const compiler = at('node_modules/typescript/bin/tsc')
const emit = ['--noEmit', 'false', '--declaration', '--emitDeclarationOnly', '--outDir', at('.build/types')]
execFileSync(process.execPath, [compiler, '-p', at('tsconfig.json'), ...emit], { stdio: 'inherit' })

const reached = new Set()
const namesOf = (file) =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import\()\s*['"](\.[^'"]+)\.js['"]/g)].map(([, to]) =>
    path.resolve(path.dirname(file), `${to}.d.ts`),
  )
const follow = (file) => {
  if (reached.has(file) || !existsSync(file)) return
  reached.add(file)
  for (const to of namesOf(file)) follow(to)
}
follow(at('.build/types/src/node.d.ts'))
// the face is read by those who use it; what lies deeper is there for the compiler
const isRead = new Set(['index', 'node'].map((name) => at(`.build/types/src/${name}.d.ts`)))
const forCompiler = (text) =>
  text
    .replace(/^\s*\/\*\*[\s\S]*?\*\/\n/gm, '')
    // of what nobody may touch not even the names
    .replace(/^\s*private (?:static )?(?:readonly )?(?:[gs]et )?\w+(?:\(\))?;\n/gm, '')
    .replace(/^\s*protected [^{}\n]*;\n/gm, '')
    // texts stay as they are; around signs no room is needed
    .replace(/("[^"\n]*"|'[^'\n]*'|`[^`]*`)|\s*([{}<>;:,|()[\]=])\s*/g, (_, words, sign) => words ?? sign)
    .replace(/\n\s*/g, ' ')
    .replace(/[;}](?=(?:import|export|declare)\b)/g, '$&\n')
// what is written a hundred times for the compiler has a name
const quantity = 'z.ZodPipe<z.ZodUnknown,z.ZodTransform<number,unknown>>'
const named = (text) =>
  text.includes(quantity) ? `${text.replaceAll(quantity, 'ZodQuantity')}\ntype ZodQuantity=${quantity};\n` : text
for (const each of readdirSync(at('.build/types'), { recursive: true, withFileTypes: true })) {
  const file = path.join(each.parentPath, each.name)
  if (!each.isFile()) continue
  if (!reached.has(file)) rmSync(file)
  else if (!isRead.has(file)) writeFileSync(file, named(forCompiler(readFileSync(file, 'utf8'))))
}
