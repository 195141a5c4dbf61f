/** Text of a scenario in markup: nothing of it may be taken for more than text. */

/** `text` for the content and the attributes of HTML and SVG. Control characters, which SVG may not hold, become spaces. */
export const escaped = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, ' ')
    .replace(
      /[&<>"']/g,
      (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' })[sign]!,
    )
