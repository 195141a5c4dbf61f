/** The sections of a report: tables and charts of one subject stand together, in this order, wherever a report is shown. */

/** Title of each section by its key, in their order. */
export const sections = {
  figures: 'What it puts out',
  days: 'Day by day',
  causes: 'What stood, how often and how long',
  designs: 'The designs',
  differences: 'What differs',
  unknown: 'What is not known of the inputs',
  machines: 'What each machine does',
  places: 'Where cases wait',
  money: 'Tape and money',
  losses: 'What is lost, and to what',
  hand: 'By hand and simulated',
  values: 'Values for the scenario',
  record: 'What the record holds',
  inputs: 'What it says of the inputs',
  alike: 'Whether it was alike all the time',
} as const
export type Section = keyof typeof sections

/** The table as one of a section. */
export const within = <T extends object>(section: Section, table: T): T & { section: Section } => ({
  section,
  ...table,
})

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
