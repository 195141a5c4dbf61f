/** Rules between the keys of money and closure, and between them and the rest of the scenario. */
import { has } from '../kinds/traits.js'
import { beforeDivert } from './alike.js'
import type { Report } from './finding.js'
import { exampleApart } from './meant.js'
import { nearest } from './nearest.js'
import type { Scenario } from './schema.js'
import type { Path } from './walk.js'

export function checkMoney(scenario: Scenario, report: Report): void {
  const { money, tape } = scenario
  if (!money) return
  const own = (value: { currency: string } | undefined, path: Path) => {
    if (value && value.currency !== money.currency)
      report(
        path,
        'conflict',
        `all amounts must have the same currency: ${money.currency}`,
        `write an amount in ${money.currency}`,
      )
  }
  own(money.labour, ['money', 'labour'])
  own(money.downtime, ['money', 'downtime'])
  own(tape.price, ['tape', 'price'])
  for (const [name, kind] of Object.entries(scenario.cases))
    own(kind['contents-value'], ['cases', name, 'contents-value'])
  own(money.energy, ['money', 'energy'])
  own(scenario.closure?.reopens?.cost, ['closure', 'reopens', 'cost'])
  for (const [path, price] of Object.entries(money.capital ?? {})) {
    own(price, ['money', 'capital', path])
    const piece = scenario.line[path.slice('line.'.length)]
    if (price.per === 'm' && piece && !has(piece, 'conveys'))
      report(
        ['money', 'capital', path],
        'conflict',
        'only conveyors have a price per metre',
        `give the whole price, such as \`${exampleApart(`24000 ${money.currency}`, String(price.amount))}\``,
      )
  }
  checkPieces(scenario, 'capital', report)
  checkPieces(scenario, 'power', report)
}

/** What is told of pieces is told by their paths. */
function checkPieces({ money, line }: Scenario, key: 'capital' | 'power', report: Report): void {
  const pieces = Object.keys(line).map((each) => `line.${each}`)
  for (const path of Object.keys(money?.[key] ?? {}))
    if (!isPiece(path, line))
      report(
        ['money', key, path],
        'no-such-path',
        `\`${path}\` is not a piece of the line`,
        nearest(path, pieces),
        true,
      )
}

/** Whether there is such a piece, or such a divert before pieces side by side. */
const isPiece = (path: string, line: Scenario['line']): boolean =>
  path.startsWith('line.') &&
  (Object.hasOwn(line, path.slice('line.'.length)) ||
    line[beforeDivert(path) ?? '']?.['side-by-side'] !== undefined)

/** A load compares with one on the reference: a share of it, or both as forces. */
export function checkClosure({ closure }: Scenario, report: Report): void {
  if (!closure?.load) return
  const { load, reference } = closure
  if (!reference)
    report(
      ['closure', 'load'],
      'missing-key',
      'a load can only be compared with the load on a reference closure',
      'add `reference` with its width, leg and load',
    )
  else if ('newtons' in load && reference.load === undefined)
    report(
      ['closure', 'reference'],
      'missing-key',
      'the load is a force, but the reference has no load to compare it with',
      `give \`load\` in the reference, or this load as a share of it, such as \`${exampleApart('120 %', String(load.newtons))}\``,
      true,
    )
}
