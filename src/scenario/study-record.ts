/** What a study says of itself, in words for its report; nothing of it is simulated. */
import { text } from './kit.js'

const words = (doc: string) => text(`${doc}; printed in the report`, 500)

/** Keys of `study` that the report quotes. */
export const studyRecord = {
  purpose: words('the question of the study').optional(),
  decision: words('the decision that depends on the answer, by whom and when').optional(),
  'data-source': words('source of the figures in this file: what was measured, when, by whom').optional(),
  'validated-by': words(
    'what the model was compared with, such as a week of the plant’s own counts',
  ).optional(),
}
