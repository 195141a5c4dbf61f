/** How long a text may be for what is done with it in the page itself, letters: to read YAML takes some microseconds for each. */

/** Read anew with every key that is typed. */
export const quickText = 20_000
/** Shown as fields, which reads it anew with each change: some 500 pieces, or 1 000 kinds of cases. Longer ones are changed as text. */
export const mostForFields = 100_000
