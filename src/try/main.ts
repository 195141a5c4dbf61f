/** What runs in the page to try a line in, and in its workers: one program, which looks where it is. */
import type { PageData } from './data.js'
import { startStudy } from './study/client.js'
import { serve } from './study/serve.js'
import { start } from './view/page.js'

if (typeof document === 'undefined') serve(globalThis as unknown as Parameters<typeof serve>[0])
else {
  const data = JSON.parse(document.getElementById('data')!.textContent) as PageData
  const script = document.currentScript!.textContent
  start({ data, studied: (tell) => startStudy(script, tell) })
}
