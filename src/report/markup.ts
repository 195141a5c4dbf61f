/** Text of a scenario in markup: nothing of it may be taken for more than text, nor turn what stands around it. */
import { printable } from '../scenario/printable.js'

/** `text` for the content and the attributes of HTML and SVG; signs that control are shown as a dot. */
export const escaped = (text: string): string =>
  printable(text).replace(
    /[&<>"']/g,
    (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' })[sign]!,
  )
