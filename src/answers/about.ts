/** What a result document tells of its study beside the figures, so that a report can be made of the document alone. */

/** A finding of the check, as a report repeats it. */
export interface ToldFinding {
  severity: 'error' | 'warning'
  code: string
  /** Dotted path of the key. */
  path: string
  message: string
  basis: string
  fix: string
  /** The design that it is about; null: the scenario as it stands. */
  design: string | null
}

/** The study in the words of its scenario, and what the check finds. Null where the scenario does not say. */
export interface About {
  /** The first comment of the file that asks something. */
  question: string | null
  purpose: string | null
  decision: string | null
  dataSource: string | null
  validatedBy: string | null
  /** Errors and warnings, the worst first. */
  findings: ToldFinding[]
  /** What the scenario gives itself, by path, as a file would have it. */
  given: { path: string; value: string }[]
}
