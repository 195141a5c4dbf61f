/** Planned work in a shift, worked by hand: with nobody, with somebody who must come, and beside stops and breaks. */
import { describe, expect, it } from 'vitest'
import type { Line } from '../../src/line/line.js'
import { build } from './arriving.js'
import { reader } from './shift.js'

const micro = (value: number) => Math.round(value * 1e6) / 1e6

/** Cases come at these times, or none; the station `s` takes them into a waiting room without limit. */
const lineOf = (arrivals: number[], station: string, shift: string, crew?: string): Line =>
  build(
    arrivals.length === 0
      ? '{time-between: 1 h}'
      : '{log: {file: x.csv, time: t, unit: s}, when-full: queue}',
    `{${shift}}`,
    {
      cases: '{a: {length: 400 mm, width: 300 mm, height: 300 mm}}',
      line: `{s: {type: station, waiting-room: unlimited, ${station}}}${crew === undefined ? '' : `\ncrew: ${crew}`}`,
      rows: [['t'], ...arrivals.map((time) => [String(time)])],
    },
  )

/** States of `s`, what leaves it, and what people do there. */
function storyOf(line: Line): string[] {
  const told: string[] = []
  line.observe(({ time, event, at, state, case: item, person, task, lasts }) => {
    const words: Partial<Record<typeof event, string>> = {
      state: `${state}`,
      leaves: `case ${item} leaves`,
      'planned-work': `${person ?? 'nobody'} begins ${task} for ${lasts}`,
      'planned-work-done': `${person ?? 'nobody'} is done with ${task}`,
      'sets-out': `${person} sets out for ${task}`,
      'handover-begins': 'handover',
      'handover-ends': 'handover ends',
    }
    if (at === 's' && words[event] !== undefined) told.push(`${micro(time)} ${words[event]}`)
  })
  line.simulate('hand', 1)
  line.observe(null)
  return told
}

function readerOf(line: Line) {
  return reader(line, line.simulate('hand', 1))
}

describe('planned work', () => {
  it('that needs nobody begins on time: the case in hand waits, and goes on with what was left', () => {
    const line = lineOf(
      [0, 7],
      'time: 5 s, planned: [{does: cleaning, at: 8 s, takes: 10 s}]',
      'length: 30 s',
    )
    expect(storyOf(line)).toEqual([
      '0 working',
      '5 case 1 leaves',
      '5 waiting',
      '7 working',
      '8 nobody begins cleaning for 10',
      '8 planned-stop',
      '18 nobody is done with cleaning',
      '18 working',
      '22 case 2 leaves',
      '22 waiting',
    ])
    const read = readerOf(line)
    expect(read('equipment.s.states.planned-stop')).toBeCloseTo(10 / 30, 12)
    expect(read('equipment.s.measures.planned-work')).toBe(1)
    expect(read('equipment.s.measures.utilisation')).toBeCloseTo(10 / 30, 12)
  })

  it('again and again is due from the start of each shift, and not at its end', () => {
    // at 10, 20 of a shift of 30 s, and of the next one at 40 and 50
    const plan = 'time: 5 s, planned: [{does: cleaning, every: 10 s, takes: 4 s}]'
    const line = lineOf([0], plan, 'length: 30 s, start: carry-over, campaign: 2')
    expect(storyOf(line).filter((what) => what.includes('begins'))).toEqual([
      '10 nobody begins cleaning for 4',
      '20 nobody begins cleaning for 4',
      '40 nobody begins cleaning for 4',
      '50 nobody begins cleaning for 4',
    ])
    expect(readerOf(line)('equipment.s.measures.planned-work')).toBe(2)
    expect(readerOf(line)('equipment.s.states.planned-stop')).toBeCloseTo(16 / 60, 12)
  })

  it('with somebody: the piece runs on until they are there', () => {
    const line = lineOf(
      [6, 9],
      'time: 5 s, planned: [{does: cleaning, at: 8 s, takes: 10 s, needs: o}]',
      'length: 40 s',
      '{o: {walk: 2 s, does: [jams]}}',
    )
    // there at 10, with 1 s of the first case left
    expect(storyOf(line)).toEqual([
      '0 waiting',
      '6 working',
      '8 o sets out for cleaning',
      '10 o begins cleaning for 10',
      '10 planned-stop',
      '20 o is done with cleaning',
      '20 working',
      '21 case 1 leaves',
      '26 case 2 leaves',
      '26 waiting',
    ])
    const read = readerOf(line)
    expect(read('equipment.s.measures.planned-work-wait')).toBeCloseTo(2, 12)
    expect(read('crew.o.busy')).toBeCloseTo(12 / 40, 12)
  })

  it('waits for those who are at a stop, and comes before other work', () => {
    const line = lineOf(
      [],
      'time: 5 s, breakdowns: {after: 7 s, counted-in: calendar-time, repair: 6 s}, planned: [{does: cleaning, at: 8 s, takes: 3 s, needs: o}]',
      'length: 19 s',
      '{o: {does: [breakdowns], other-work: {every: 9 s, takes: 5 s}}}',
    )
    // down 7 to 13, cleaned 13 to 16, other work due from 9 begins at 16; down again at 20
    expect(storyOf(line)).toEqual([
      '0 waiting',
      '7 o sets out for breakdowns',
      '7 breakdown-being-repaired',
      '13 o sets out for cleaning',
      '13 o begins cleaning for 3',
      '13 planned-stop',
      '16 o is done with cleaning',
      '16 waiting',
    ])
    expect(readerOf(line)('crew.o.other-work')).toBeCloseTo(3 / 19, 12)
    expect(readerOf(line)('equipment.s.measures.planned-work-wait')).toBeCloseTo(5, 12)
  })

  it('that is due in a break waits for the people who are away, and needs no end of it where it needs nobody', () => {
    const shift = 'length: 40 s, breaks: [{at: 8 s, for: 10 s}], breaks-stop: everything'
    const story = (needs: string) =>
      storyOf(
        lineOf(
          [],
          `time: 5 s, planned: [{does: cleaning, at: 8 s, takes: 4 s${needs}}]`,
          shift,
          '{o: {does: [jams]}}',
        ),
      )
    expect(story(', needs: o')).toEqual([
      '0 waiting',
      '8 on-break',
      '18 o sets out for cleaning',
      '18 o begins cleaning for 4',
      '18 planned-stop',
      '22 o is done with cleaning',
      '22 waiting',
    ])
    expect(story('')).toEqual([
      '0 waiting',
      '8 nobody begins cleaning for 4',
      '8 planned-stop',
      '12 nobody is done with cleaning',
      '12 on-break',
      '18 waiting',
    ])
  })

  it('of two kinds that overlap stands until both are done, and one that is due while it is under way follows', () => {
    const plan =
      '[{does: cleaning, every: 10 s, takes: 3 s, needs: o}, {does: greasing, at: 11 s, takes: 4 s}]'
    const line = lineOf([], `time: 5 s, planned: ${plan}`, 'length: 40 s', '{o: {walk: 9 s, does: [jams]}}')
    // cleaning due at 10, 20 and 30: under way until 22, so that the next begins, with its walk, at 31, and the third at 43
    expect(storyOf(line)).toEqual([
      '0 waiting',
      '10 o sets out for cleaning',
      '11 nobody begins greasing for 4',
      '11 planned-stop',
      '15 nobody is done with greasing',
      '15 waiting',
      '19 o begins cleaning for 3',
      '19 planned-stop',
      '22 o is done with cleaning',
      '22 o sets out for cleaning',
      '22 waiting',
      '31 o begins cleaning for 3',
      '31 planned-stop',
      '34 o is done with cleaning',
      '34 o sets out for cleaning',
      '34 waiting',
    ])
  })
})

describe('the pace of people by the hour', () => {
  it('divides the time of a case by that of the hour in which it begins; the last one holds on, and a new shift begins anew', () => {
    // 30 min a case; hours at 100 %, 50 %: from 0, from 30 min, from 60 min at half the pace (60 min), from 2 h on too; the second shift
    // of 4 h begins with 10 min left of the case begun at 3 h 10 min
    const station = 'time: 30 min, run-by: people, by-hour: [100 %, 50 %]'
    const line = lineOf([0, 0, 0, 0, 11400], station, 'length: 4 h, start: carry-over, campaign: 2')
    // the log comes again in the second shift
    expect(storyOf(line).filter((what) => what.includes('leaves'))).toEqual([
      '1800 case 1 leaves',
      '3600 case 2 leaves',
      '7200 case 3 leaves',
      '10800 case 4 leaves',
      '15000 case 5 leaves',
      '16800 case 6 leaves',
      '18600 case 7 leaves',
      '22200 case 8 leaves',
      '25800 case 9 leaves',
    ])
  })

  it('of 100 % changes nothing', () => {
    const story = (pace: string) =>
      storyOf(lineOf([0, 1, 2], `time: 7 s, run-by: people${pace}`, 'length: 30 s'))
    expect(story(', by-hour: [100 %, 100 %]')).toEqual(story(''))
  })
})

describe('the handover of shifts', () => {
  it('stops the place at the start and the end of each shift, as a break of its own', () => {
    const line = lineOf(
      [0, 22],
      'time: 6 s, run-by: people, handover: 5 s',
      'length: 30 s, start: carry-over, campaign: 2',
    )
    // 25 to 35 is one handover: case 2, begun at 22, has 3 s left; the log comes again at 30 and 52
    expect(storyOf(line)).toEqual([
      '0 handover',
      '0 on-break',
      '5 handover ends',
      '5 working',
      '11 case 1 leaves',
      '11 waiting',
      '22 working',
      '25 handover',
      '25 on-break',
      '35 handover ends',
      '35 working',
      '38 case 2 leaves',
      '44 case 3 leaves',
      '44 waiting',
      '52 working',
      '55 handover',
      '55 on-break',
    ])
    expect(readerOf(line)('equipment.s.states.on-break')).toBeCloseTo(20 / 60, 12)
  })
})
