/** Arrivals by orders: runs of one case with a quantity, one after the other: `orders`. */
import { never } from '../engine/clock.js'
import type { Draw } from '../engine/draw.js'
import type { Scenario } from '../scenario/schema.js'
import type { Floor } from './floor.js'
import { arrivalMeasures, type Measure } from './measure.js'
import { Pace, Time } from './pace.js'

type OrderKeys = NonNullable<Scenario['arrivals'][string]['orders']>

interface Order {
  kind: number
  quantity: number
  between: Draw
  before: Draw
}

/** Each order draws from streams of its own, so that the quantity of one changes no time of another. */
export class OrderedPace extends Pace {
  override readonly batch = 1
  private readonly orders: readonly Order[]
  /** The order in hand, and cases of it that are not yet due. */
  private inHand = -1
  private left = 0
  private done = 0

  constructor(floor: Floor, owner: string, keys: OrderKeys) {
    super()
    const kinds = Object.keys(floor.scenario.cases)
    this.orders = keys.map((order, index) => ({
      kind: kinds.indexOf(order.case),
      quantity: order.quantity,
      between: floor.intervals(owner, `time between, order ${index + 1}`, order['time-between'], 1),
      before: floor.draws(owner, `before order ${index + 1}`, order.before ?? { law: 'constant', value: 0 }),
    }))
  }

  override clear(): void {
    this.done = 0
  }

  override reset(): void {
    this.inHand = -1
    this.left = 0
  }

  override next(): void {
    const { times } = this
    let from = times[Time.now]!
    if (this.left === 0) {
      if (this.inHand + 1 >= this.orders.length) {
        times[Time.due] = never
        return
      }
      const order = this.orders[++this.inHand]!
      this.left = order.quantity
      from += order.before.draw()
    }
    this.left--
    const { between } = this.orders[this.inHand]!
    between.next()
    times[Time.due] = from + between.value
  }

  override bring(): number {
    if (this.left === 0) this.done++
    return this.orders[this.inHand]!.kind
  }

  /** A break keeps what is left of the interval, and of the time before an order. */
  override afterBreak(due: number, began: number, now: number): number {
    return due + (now - began)
  }

  override measures(name: string): Measure[] {
    return [arrivalMeasures(name)('orders-done', () => this.done)]
  }
}
