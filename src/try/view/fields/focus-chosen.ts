/** Where buttons are no more after they were used, those who used one go on at the part that is open now. */

/** Puts the keys onto the part that is open, once the page shows it; on a narrow screen onto the list of parts. */
export function focusChosen(): void {
  setTimeout(() => {
    const chosen = [...document.querySelectorAll<HTMLElement>('.part[aria-pressed=true], .chooser select')]
    chosen.find((each) => each.offsetParent !== null)?.focus()
  })
}
