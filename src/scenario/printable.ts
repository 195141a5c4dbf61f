/** Text of files and command lines in messages: made safe, and short. */

/** Text from a file that may hold anything, made safe for a terminal: control characters shown as a dot. */
export const printable = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this removes
  text.replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g, '·')

/** A value as short text for a message. */
export function shown(value: unknown, most = 60): string {
  let text: string
  if (value === undefined) text = 'nothing'
  else if (typeof value === 'string') text = value
  else {
    try {
      text = JSON.stringify(value) ?? String(value)
    } catch {
      text = String(value)
    }
  }
  text = printable(text)
  return text.length > most ? `${text.slice(0, most - 1)}…` : text
}
