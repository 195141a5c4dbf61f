/** Names of measures as questions and answers have them. */

/** A measure of the line as a whole. */
export type MeasureKey = string

/** Its key, or the dotted path of a measure of a part of it. */
export type MeasureName = MeasureKey | `equipment.${string}` | `crew.${string}` | `arrivals.${string}`
