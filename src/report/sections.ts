/** The sections of a report: tables and charts of one subject stand together, in this order, wherever a report is shown. */

/** Title of each section by its key, in their order. */
export const sections = {
  figures: 'Output',
  days: 'Day by day',
  causes: 'Stops: how often and how long',
  designs: 'The designs',
  differences: 'What differs',
  unknown: 'Uncertainty of the inputs',
  machines: 'What each machine does',
  places: 'Where cases wait',
  money: 'Tape and money',
  losses: 'Where output is lost',
  hand: 'Hand calculation and simulation',
  values: 'Values for the scenario',
  record: 'What the record holds',
  inputs: 'Inputs from the record',
  alike: 'Did anything change during the record?',
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
