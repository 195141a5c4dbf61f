/** Divert: sends each case on by one of several ways: by its kind, by turns, or to where fewest cases are. */
import { sentKey } from '../../catalogue/of-equipment.js'
import type { CaseIndex } from '../../line/cases.js'
import type { Floor } from '../../line/floor.js'
import { type Measure, pieceMeasures } from '../../line/measure.js'
import { OnePlace } from '../one-place.js'
import type { DivertKeys } from './keys.js'

const none = -1

export class Divert extends OnePlace {
  private readonly rule: DivertKeys['rule']
  /** Name of the target of each way, in the order of the unit's ways. */
  private readonly targets: readonly string[]
  /** By kind of case: its way; read by case only. */
  private readonly wayOfKind: Int32Array
  private readonly sent: Uint32Array
  private readonly hasRefused: Uint8Array
  /** Whose turn it is. */
  private turn = 0

  constructor(floor: Floor, name: string, keys: DivertKeys) {
    super(floor, name, keys)
    this.rule = keys.rule
    this.targets = Object.values(keys.to)
    const byCase = Object.keys(keys.to)
    this.wayOfKind = Int32Array.from(Object.keys(floor.scenario.cases), (kind) => byCase.indexOf(kind))
    this.sent = new Uint32Array(this.targets.length)
    this.hasRefused = new Uint8Array(this.targets.length)
  }

  override empty(): void {
    super.empty()
    this.turn = 0
  }

  /** Whose turn it is stays. */
  override countAnew(): void {
    this.sent.fill(0)
  }

  protected override passOn(item: CaseIndex): boolean {
    if (this.rule === 'shortest') return this.passToShortest(item)
    const way = this.rule === 'by-case' ? this.wayOfKind[this.floor.cases.kind[item]!]! : this.turn
    if (!this.unit.ways[way]!.offer(item, this.unit)) return false
    this.sent[way]!++
    // the turn passes on with the case: a target that has no room is waited for
    if (this.rule === 'alternate') this.turn = (this.turn + 1) % this.targets.length
    return true
  }

  /** Offers to the targets in order of how many cases they hold, the first named among equals, until one takes it. */
  private passToShortest(item: CaseIndex): boolean {
    const { ways } = this.unit
    this.hasRefused.fill(0)
    for (let left = ways.length; left > 0; left--) {
      const best = this.shortest()
      if (ways[best]!.offer(item, this.unit)) {
        this.sent[best]!++
        // those that said no, now or before, need not call back
        for (let way = 0; way < ways.length; way++) if (way !== best) ways[way]!.withdraw(this.unit)
        return true
      }
      this.hasRefused[best] = 1
    }
    return false
  }

  /** Of the ways that have not said no the one that holds fewest cases. */
  private shortest(): number {
    const { ways } = this.unit
    let best = none
    let fewest = Infinity
    for (let way = 0; way < ways.length; way++) {
      if (this.hasRefused[way]) continue
      const held = ways[way]!.held()
      if (held < fewest) {
        best = way
        fewest = held
      }
    }
    return best
  }

  override measures(): Measure[] {
    const measure = pieceMeasures(this.name)
    return [...new Set(this.targets)].map((target) =>
      measure(sentKey(target), () =>
        this.targets.reduce((sum, each, way) => sum + (each === target ? this.sent[way]! : 0), 0),
      ),
    )
  }
}
