/** `tapeshift try`: a page in which the line can be changed, and is simulated at once. */
import type { Command } from 'commander'
import { misuse } from '../scenario/fault.js'
import { exits, type Io } from './io.js'

/** Adds the command; `finish` takes its exit code. */
export function addTry(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('try')
    .argument(
      '[SCENARIO]',
      'scenario file, or - for standard input; without one the page opens on a choice of lines',
    )
    .description(
      'write a page in which you change the line and see at once what it does; it needs no network',
    )
    .addHelpText(
      'before',
      'Examples:\n  tapeshift try line.yaml\n  tapeshift try line.yaml --out pages           writes pages/try.html\n  tapeshift try line.yaml --out pages/line.html\n  tapeshift try                            a choice of lines to start from\n',
    )
    .addHelpText(
      'after',
      '\nThe page gives the same figures as `tapeshift run` for the same scenario, seed and number of shifts.',
    )
    .option(
      '--out <DIR>',
      'folder for try.html, or a name that ends in .html (default: out/<scenario>-try, or out)',
    )
    .action(async (name: string | undefined, { out }: { out?: string }) => {
      if (out === '') throw misuse('--out needs the name of a folder')
      // what assembles the page takes long to load: not for --help
      const { writeTryPage } = await import('./make-try.js')
      await writeTryPage(name, out, io)
      finish(exits.done)
    })
}
