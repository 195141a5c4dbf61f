// Bundles the program into `.build/cli`: a few files that load in a fraction of the time of several hundred.
import { rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'

const at = (name) => fileURLToPath(new URL(`../${name}`, import.meta.url))

rmSync(at('.build'), { recursive: true, force: true })
await build({
  entryPoints: {
    main: at('src/cli/main.ts'),
    // found beside the program by those who start it
    worker: at('src/study/workers/worker.ts'),
    bench: at('src/cli/bench.ts'),
    'write-schema': at('src/cli/write-schema.ts'),
  },
  outdir: at('.build/cli'),
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  sourcemap: true,
  minifyWhitespace: true,
  minifySyntax: true,
  legalComments: 'external',
  logLevel: 'warning',
  // those that bring files of their own, native code or threads stay where npm put them
  external: ['canvas', 'chart.js', 'chartjs-node-canvas', 'dejavu-fonts-ttf', 'piscina'],
  // libraries of the older module format ask for Node's modules by `require`
  banner: {
    js: "import { createRequire as requireOf } from 'node:module'; const require = requireOf(import.meta.url);",
  },
})

// what runs in the page of a report, put into it by the program
await build({
  entryPoints: { page: at('src/report/browser/main.ts') },
  outdir: at('.build/cli'),
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: 'es2020',
  minify: true,
  legalComments: 'none',
  logLevel: 'warning',
})
