/** Shares of a mixture that are drawn: together they are all of it, whatever each of them rests on. */

import { valueAt } from '../scenario/issues.js'
import type { Evidence } from '../scenario/known.js'
import type { Mixture } from '../scenario/law.js'
import type { Scenario } from '../scenario/schema.js'
import type { Copy } from './copy.js'

type Place = readonly (string | number)[]

/** The list of parts whose share stands at a place; null of other places. */
const listOf = (at: Place): Place | null =>
  at.at(-1) === 'share' && at.at(-3) === 'mixture' ? at.slice(0, -2) : null

const partsAt = (scenario: Scenario, list: Place) => valueAt(scenario, list) as Mixture['mixture']

/** The mixtures of which shares are drawn. */
export class DrawnShares {
  private readonly lists = new Map<string, { at: Place; drawn: Set<number> }>()

  constructor(
    private readonly scenario: Scenario,
    evidence: readonly Evidence[],
  ) {
    for (const { at } of evidence) {
      const list = listOf(at)
      if (list === null) continue
      const key = list.join('.')
      const known = this.lists.get(key) ?? { at: list, drawn: new Set() }
      known.drawn.add(Number(at.at(-2)))
      this.lists.set(key, known)
    }
  }

  /**
   * Whether a place is a share of which all others are drawn too: then counts are drawn as gamma, and divided by their sum, which makes
   * them Dirichlet, of two parts beta.
   */
  isOneOfAll(at: Place): boolean {
    const list = this.lists.get(listOf(at)?.join('.') ?? '')
    return list !== undefined && list.drawn.size === partsAt(this.scenario, list.at).length
  }

  /** Where all shares of a mixture were drawn they are divided by their sum; else the others keep their proportions in what is left. */
  balance(copy: Copy): void {
    for (const { at, drawn } of this.lists.values()) {
      const parts = partsAt(copy.made, at)
      const sum = (isDrawn: boolean) =>
        parts.reduce((total, { share }, index) => total + (drawn.has(index) === isDrawn ? share : 0), 0)
      const [ofDrawn, ofOthers] = [sum(true), sum(false)]
      for (const [index, { share }] of parts.entries()) {
        const isAll = drawn.size === parts.length
        if (isAll) copy.set([...at, index, 'share'], share / ofDrawn)
        else if (!drawn.has(index)) copy.set([...at, index, 'share'], (share * (1 - ofDrawn)) / ofOthers)
      }
    }
  }
}
