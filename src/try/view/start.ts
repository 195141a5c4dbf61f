/** The page that people see. */
import type { PageData } from '../data.js'
import type { Study } from '../study/client.js'
import type { Told } from '../study/messages.js'

/** Shows the page; `studied` starts the study, which hands what it tells to what it is given. */
export function start(data: PageData, _studied: (tell: (told: Told) => void) => Study): void {
  document.title = data.line?.name ?? 'tapeshift'
}
