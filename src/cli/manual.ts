/** `tapeshift manual`: the whole manual as one page. */
import path from 'node:path'
import type { Command } from 'commander'
import { misuse } from '../scenario/fault.js'
import { version } from '../version.js'
import { exits, type Io } from './io.js'

/** Adds the command; `finish` takes its exit code. */
export function addManual(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('manual')
    .description('write the manual as one page that can be searched; it opens without a network')
    .addHelpText(
      'before',
      'Examples:\n  tapeshift manual\n  tapeshift manual --out handbook               writes handbook/manual.html\n  tapeshift manual --out handbook/pages.html\n',
    )
    .option('--out <DIR>', 'folder for manual.html, or a name that ends in .html (default: out)')
    .action(async ({ out = 'out' }: { out?: string }) => {
      if (out === '') throw misuse('--out needs the name of a folder')
      const [{ manualOfProgram }, { manualPage }, { programs }, { writeWhole }, { shownPath }] =
        await Promise.all([
          import('./described.js'),
          import('../manual/page.js'),
          import('./page-script.js'),
          import('./files.js'),
          import('./result-folder.js'),
        ])
      const file = path.resolve(io.cwd, /\.html?$/i.test(out) ? out : path.join(out, 'manual.html'))
      await writeWhole(
        file,
        manualPage(manualOfProgram(program), `${program.name()} ${version}`, programs().search),
      )
      io.stdout.write(`Manual: ${shownPath(file, io.cwd)}\n`)
      finish(exits.done)
    })
}
