/** The page to try a line in as one file that needs nothing else: style, scenario and program are inside. */
import { policyHash } from '../page/base64.js'
import { dataBlock, scriptText } from '../page/html.js'
import { style } from '../page/style.js'
import { html, markup } from '../report/markup.js'
import { hashOf } from '../scenario/hash.js'
import { version } from '../version.js'
import type { Line, PageData, Start } from './data.js'
import { tryStyle } from './view/style.js'

/** The page of a line, or of lines to start from; `script` is the program that runs in it. */
export function tryPage(line: Line | null, starts: readonly Start[], script: string): string {
  const program = scriptText(script)
  const looks = style + tryStyle
  const data: PageData = { version, line, starts, key: hashOf([version, line, starts]).slice(0, 16) }
  const page = html`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta http-equiv="Content-Security-Policy" content="${markup(policy(program, looks))}"><title>${line?.name ?? 'tapeshift'}: try the line</title><style>${markup(looks)}</style></head>
<body><noscript><p>This page simulates a line: it needs JavaScript, which is off in this browser.</p></noscript>
`
  return `${page}${dataBlock('data', data)}<script>${program}</script>
</body>
</html>
`
}

/**
 * Nothing comes from outside, and only this program runs: in the page, and in workers that are made of its own text, which is why they
 * come from `blob:`. The editor of texts puts its style into a shadow root as style sheets of the program, which need no word here.
 */
const policy = (script: string, looks: string) =>
  [
    "default-src 'none'",
    `script-src ${policyHash(script)}`,
    'worker-src blob:',
    `style-src ${policyHash(looks)}`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ')
