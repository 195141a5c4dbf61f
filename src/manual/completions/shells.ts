/** Scripts with which shells complete what is typed, one a shell. */
import type { ProgramText } from '../commands.js'
import { bashScript } from './bash.js'
import { fishScript } from './fish.js'
import type { Shell } from './names.js'
import { zshScript } from './zsh.js'

/** `topics` are what `help` takes. */
type Script = (program: ProgramText, topics: readonly string[]) => string

export const shells: Readonly<Record<Shell, Script>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
}
