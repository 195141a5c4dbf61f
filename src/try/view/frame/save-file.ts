/** Hands a scenario file to whoever sits before the page. */

/** Lets the browser save `text` under the last part of `name`. */
export function saveFile(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = document.createElement('a')
  link.href = address
  link.download = name.split(/[/\\]/).at(-1) || 'line.yaml'
  link.click()
  // the browser reads it after the click
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}
