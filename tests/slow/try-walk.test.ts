/** A thousand random edits never leave the page to try a line in without an answer. */
import { patience } from '../browser/try-page.js'
import { itWalks } from '../browser/try-walk.js'

itWalks(1_000, 8 * patience)
