// Bundles the program into `.build/cli`: a few files that load in a fraction of the time of several hundred.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, constants } from 'node:zlib'
import { build } from 'rolldown'
import { writeLicences } from './licences.mjs'

const at = (name) => fileURLToPath(new URL(`../${name}`, import.meta.url))

rmSync(at('.build'), { recursive: true, force: true })

// `const` stays what it is, unlike with bundlers that make it `var`: the compiler then knows the value, and a shift
// takes a seventh less time
const forNode = {
  platform: 'node',
  // those that bring files of their own, native code or threads stay where npm put them
  external: [/^canvas(\/|$)/, /^chart\.js/, 'dejavu-fonts-ttf', 'piscina', 'bullmq', 'ioredis'],
  output: {
    dir: at('.build/cli'),
    format: 'esm',
    // nothing in the program names the maps: that would take room in the package
    sourcemap: 'hidden',
    // names are shortened for the size of the package: a shift takes as long
    minify: { compress: { target: 'node20' }, mangle: true, codegen: true },
    // licences stand in licences.txt, all of them
    comments: { legal: false, annotation: false },
    // no hashes: they cannot be packed, and each build begins from nothing
    chunkFileNames: '[name].js',
  },
}

const program = await build({
  ...forNode,
  input: {
    main: at('src/cli/main.ts'),
    // what programs import that use it
    index: at('src/index.ts'),
    node: at('src/node.ts'),
    // found beside the program by those who start it
    worker: at('src/shifts/threads/worker.ts'),
    'write-schema': at('src/cli/write-schema.ts'),
    'write-man': at('src/cli/write-man.ts'),
  },
})

// what `npm run bench` and a test measure with, bundled alike
await build({
  ...forNode,
  input: { bench: at('tests/bench/bench.ts'), queue: at('tests/bench/queue.ts') },
  output: { ...forNode.output, dir: at('.build/bench') },
})

const forPage = {
  platform: 'browser',
  // taken from memory: in the folder they would write over parts of the program that have their names
  write: false,
  // packages that do not say of themselves that loading them does nothing else: what of them the page does not use stays out
  treeshake: { moduleSideEffects: [{ test: /node_modules\/(yaml|fastest-levenshtein|@stdlib)\//, sideEffects: false }] },
  output: { format: 'iife', minify: true, comments: { legal: false, annotation: false }, codeSplitting: false },
}

// what runs in the page of a report, put into it by the program
const page = await build({
  ...forPage,
  input: { page: at('src/page/main.ts') },
  transform: { target: 'es2020' },
})

// what runs in the page to try a line in, and in its workers
const tried = await build({
  ...forPage,
  input: { try: at('src/try/main.ts') },
  // the compiler options are for what runs without a page
  tsconfig: false,
  resolve: { alias: { 'csv-stringify/browser/esm/sync': at('src/try/no-rows.ts') } },
  transform: { target: 'es2022', jsx: { runtime: 'automatic', importSource: 'preact' } },
})

// what searches in the page of the manual
const search = await build({
  ...forPage,
  input: { search: at('src/page/search.ts') },
  transform: { target: 'es2020' },
})

// programs of pages are only ever put into one: packed together, for much of them is the same, they take half of what the package would make of them
const programs = Object.fromEntries([tried, page, search].map(({ output: [{ name, code }] }) => [name, code]))
const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_LGBLOCK]: 16 }
const pack = (name, texts) =>
  writeFileSync(at(`.build/cli/${name}.json.br`), brotliCompressSync(JSON.stringify(texts), { params }))
pack('pages', programs)

// the written topics of the manual lie beside the program, and the manual page is made of what the program says of itself
const topics = readdirSync(at('src/manual/texts'))
pack('manual', Object.fromEntries(topics.map((file) => [file.replace(/\.md$/, ''), readFileSync(at(`src/manual/texts/${file}`), 'utf8')])))
await import(at('.build/cli/write-man.js'))

const modules = [program, page, tried].flatMap(({ output }) => output.flatMap(({ moduleIds = [] }) => moduleIds))
writeLicences(modules, at('.build/cli/licences.txt'))
