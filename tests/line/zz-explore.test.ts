import { it } from 'vitest'
import { tell } from './story.js'
import { Line } from '../../src/line/line.js'
import { loadScenario } from '../../src/scenario/load.js'

const text = (chance: number, min: number) => `cases: {a: {length: 400 mm, width: 300 mm, height: 300 mm}}
arrivals: {p: {time-between: 10 s}}
line: {sealer: {type: sealer, jams: {chance: ${chance} %, clear: {exponential: {mean: 40 s}}}}}
shift: {length: ${min} min, run-out: 1 h}
`
it('x', () => {
  for (const min of [3, 5, 10])
    for (let shift = 1; shift <= 400; shift++) {
      const a = tell(text(10, min), shift, 'm').read('measures.output')
      const b = tell(text(20, min), shift, 'm').read('measures.output')
      if (b > a) {
        console.log('FOUND', min, shift, a, b)
        for (const c of [10, 20]) {
          const line = new Line(loadScenario(text(c, min)).scenario)
          line.observe((e) => {
            if (['jams', 'freed', 'leaves', 'arrives','stops','taken','work-begins','work-done'].includes(e.event)) console.log('EV', c, e.time.toFixed(2), e.event, e.case ?? '')
          })
          line.simulate('m', shift)
        }
        return
      }
    }
})
