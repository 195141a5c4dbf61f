/** Stands in a page for what writes rows as CSV: there nobody asks for files. */
export function stringify(): never {
  throw new Error('a page writes no files')
}
