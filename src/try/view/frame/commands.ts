/** Provisional. */
import type { Desk } from '../desk/desk.js'
export const commandsOf = (desk: Desk) => [
  { title: 'As the command', text: `tapeshift run ${desk.line.name}` },
]
