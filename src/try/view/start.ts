/** The page that people see. */
import { h, render } from 'preact'
import type { PageData } from '../data.js'
import type { Study } from '../study/client.js'
import type { Told } from '../study/messages.js'
import { Page } from './page.js'

/** Shows the page; `studied` starts the study, which hands what it tells to what it is given. */
export function start(data: PageData, studied: (tell: (told: Told) => void) => Study): void {
  document.title = `${data.line?.name ?? 'tapeshift'}: try the line`
  // what the page holds beside it stays where it is
  const root = document.createElement('div')
  document.body.append(root)
  render(h(Page, { data, studied }), root)
}
