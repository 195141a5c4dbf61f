/** A few hundred random edits never leave the page to try a line in without an answer. */
import { patience } from './try-page.js'
import { itWalks } from './try-walk.js'

itWalks(200, 4 * patience)
