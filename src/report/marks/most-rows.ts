/** How many rows a chart draws: more than an eye compares are chosen from, and the table beside it has all. */

/** Rows of a chart; more fill several screens and a picture of many megabytes. Common practice, no source. */
export const mostRows = 24

/** The rows with the highest `weight`, in the order in which they came; all where there are few. Of equal ones the first. */
export function heaviest<Row>(
  rows: readonly Row[],
  weight: (row: Row) => number,
  most: number = mostRows,
): readonly Row[] {
  if (rows.length <= most) return rows
  const places = [...rows.keys()].sort((a, b) => weight(rows[b]!) - weight(rows[a]!))
  const chosen = new Set(places.slice(0, most))
  return rows.filter((_, place) => chosen.has(place))
}

/** ` Drawn: the 24 of 500 machines that …; the table has all.`; nothing where all are drawn. */
export const drawnOf = (drawn: number, all: number, which: string): string =>
  drawn < all ? ` Drawn: the ${drawn} of ${all} ${which}; the table has all.` : ''
