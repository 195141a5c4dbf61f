/** `tapeshift completions`: with which a shell completes what is typed. */
import { Argument, type Command } from 'commander'
import { type Shell, shellNames } from '../manual/completions/names.js'
import { exits, type Io } from './io.js'

/** Adds the command; `finish` takes its exit code. */
export function addCompletions(program: Command, io: Io, finish: (code: number) => void): void {
  program
    .command('completions')
    .addArgument(new Argument('<SHELL>', 'the shell').choices(shellNames))
    .description('print the script with which a shell completes commands, options and topics')
    .addHelpText(
      'before',
      `Examples:
  source <(tapeshift completions bash)
  tapeshift completions zsh > _tapeshift        in a folder of $fpath
  tapeshift completions fish > ~/.config/fish/completions/tapeshift.fish
`,
    )
    .action(async (shell: Shell) => {
      const [{ shells }, { described }, { made, written }] = await Promise.all([
        import('../manual/completions/shells.js'),
        import('./described.js'),
        import('../manual/topics.js'),
      ])
      const text = described(program)
      const commands = text.commands.map(({ name }) => name)
      io.stdout.write(shells[shell](text, [...Object.keys(written), ...made, ...commands]))
      finish(exits.done)
    })
}
