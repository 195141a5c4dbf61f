/** Small texts of the command line. */

/** A word as a shell would need it: plain where nothing in it is special, else in single quotes. */
export const quoted = (text: string): string =>
  /^[\w./:=-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`
