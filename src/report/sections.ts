/** The sections of a report: tables and charts of one subject stand together, in this order, wherever a report is shown. */

/** Title of each section by its key, in their order: the question that it answers. */
export const sections = {
  figures: 'How much comes out?',
  days: 'What happened day by day?',
  causes: 'What stopped the line, how often and how long?',
  designs: 'Which designs were tried?',
  differences: 'What differs between the designs?',
  unknown: 'How much do uncertain inputs matter?',
  losses: 'Where do cases get lost?',
  machines: 'What does each machine do all shift?',
  places: 'Where do cases wait?',
  money: 'What do tape and cases cost?',
  hand: 'Does it agree with a calculation by hand?',
  values: 'Which values go into the scenario?',
  record: 'What does the record hold?',
  inputs: 'How well do the fitted laws match the record?',
  alike: 'Was the plant the same all the time?',
} as const
export type Section = keyof typeof sections

/** The table as one of a section, and behind the charts that show the same figures: those of this name, or of one that begins with it. */
export const within = <T extends object>(
  section: Section,
  table: T,
  behind?: string,
): T & { section: Section; behind?: string } => ({
  section,
  ...table,
  ...(behind === undefined ? {} : { behind }),
})

/** Is a table behind a chart of this name? */
export const isBehind = ({ behind }: { behind?: string }, chart: string): boolean =>
  behind !== undefined && (chart === behind || chart.startsWith(`${behind}-`))

const order = Object.keys(sections)

/** Tables that have rows, section by section; those of one section, and those of none, as they came. */
export const inSections = <T extends { section?: Section; rows: readonly unknown[] }>(
  tables: readonly T[],
): T[] =>
  tables
    .filter(({ rows }) => rows.length > 0)
    .map((table) => ({ table, place: order.indexOf(table.section ?? 'figures') }))
    .sort((a, b) => a.place - b.place)
    .map(({ table }) => table)
