/**
 * What a study must tell for others to judge and repeat it: the items of STRESS-DES (Monks, Currie, Onggo, Robinson, Kunc & Taylor,
 * Strengthening the reporting of empirical simulation studies, Journal of Simulation 13 (2019) 55-67; from memory, in other words),
 * filled in as far as the document knows, and what is still to be told.
 */

import { type Cell, words } from '../report/cell.js'
import { counted, durationText, grouped, percentText } from '../report/format.js'
import type { Table } from '../report/report.js'
import type { WarmUp } from '../shifts/steady.js'
import type { About } from './about.js'
import { isUnsourced } from './assumed.js'
import type { LineResult } from './line-result.js'
import type { StudyDocument } from './made.js'

/** What all kinds of study tell. */
export interface StudyFacts extends Pick<StudyDocument, 'made' | 'shift' | 'assumed'> {
  about: About | undefined
  warmUp: WarmUp | null
  /** The line, or the first of those compared. */
  line: Pick<LineResult, 'equipment' | 'arrivals' | 'crew'> | null
  question: string
  /** What is tried: one line, variants, choices. */
  trials: string
  /** Are there several designs, of which each has so many shifts at most? */
  hasDesigns: boolean
  /** How figures and differences are estimated. */
  estimation: string
  /** Was a hand calculation set beside the simulation? */
  hasHand: boolean
}

/** What the study says of items, and of some what is still to be filled in, by the item. */
type Items = Record<string, string | readonly [said: string, toFill: string]>

/** An item that only the user can tell: its key of the scenario, and what is to be told. */
const told = (text: string | null | undefined, open: string, without = 'Not said.'): Items[string] =>
  text ? text : [without, open]

/** A row an item: what this study says of it, and what is still to be filled in. */
export function checklistTable(facts: StudyFacts): Table {
  const groups: Record<string, Items> = {
    Objectives: objectives(facts),
    Logic: logic(facts),
    Data: data(facts),
    Experiments: experiments(facts),
    Implementation: implementation(facts),
    Code: {
      'where the model can be had':
        'The scenario stands beside this report as scenario.yaml, with all its defaults; the program that reads it is named above.',
    },
    Trust: trust(facts),
  }
  return {
    title: 'Study checklist',
    note: 'The items of STRESS-DES (Monks and others, Journal of Simulation 13 (2019) 55-67; from memory, in other words), and below them what makes a model trusted. What only you know is marked "To fill in".',
    columns: words('item', 'what this study says', 'still to fill in'),
    rows: Object.entries(groups).flatMap(([group, items]) =>
      Object.entries(items).map(([item, said]): Cell[] =>
        typeof said === 'string'
          ? [`${group}: ${item}`, said, '']
          : [`${group}: ${item}`, said[0], { toFill: said[1] }],
      ),
    ),
  }
}

const objectives = ({ about, question, made, line }: StudyFacts): Items => {
  const outputs = `Each measure of the section on measures, with its definition; plus-minus at ${percentText(made.confidence)} confidence.`
  return {
    purpose: told(about?.purpose, 'the question in your words (study: purpose)', question),
    decision: told(about?.decision, 'what is decided by the answer, by whom and when (study: decision)'),
    'outputs of the model': line ? outputs : [outputs, 'no design was simulated for its figures'],
  }
}

function logic({ line, trials }: StudyFacts): Items {
  const kinds = Object.entries(line?.equipment ?? {}).map(([name, { type }]) => `${name} (${type})`)
  const named = (all: object | undefined) => Object.keys(all ?? {}).join(', ') || 'none'
  return {
    'overview of the line': `Cases pass ${kinds.join(', ') || 'no piece'}, in the order of the scenario unless it says otherwise.`,
    'logic of the line':
      'What each piece does, and what happens when, is defined by the format of tapeshift: its manual, tapeshift help equipment and what-happens-when.',
    'what is tried': trials,
    algorithms:
      'Simultaneous events: the piece nearest the exit first, then the order of the file. Tasks of a crew: in the order of its "does".',
    components: `Entities: cases. Sources: ${named(line?.arrivals)}. Places and queues: ${kinds.length}. People: ${named(line?.crew)}. Exit: after the last piece.`,
  }
}

function data({ about, assumed }: StudyFacts): Items {
  const weak = assumed.filter(isUnsourced).length
  const defaults = `${counted(assumed.length, 'value')} of defaults, each listed with its basis.`
  return {
    'sources of data': told(
      about?.dataSource,
      'what was measured, when and by whom, and what was estimated (study: data-source)',
    ),
    'input parameters': `${counted(about?.given.length ?? 0, 'line')} of the section on assumptions give what the scenario says, distributions with their parameters.`,
    'preparing the data': [
      'Recorded times and logs are used as they are read; none is fitted or cleaned here.',
      'what was done to the data before they came into the scenario',
    ],
    assumptions:
      weak > 0 ? [defaults, `your own values for the ${weak} without a published source`] : defaults,
  }
}

function experiments({ shift, made, warmUp, hasDesigns, estimation }: StudyFacts): Items {
  const start = {
    empty: 'Every shift starts with an empty line; nothing is cut away.',
    'carry-over': 'The first shift of a campaign starts empty, the others as the one before left the line.',
    steady: `The line runs without end; the warm-up is found by MSER-5${warmUp ? ` and cut at ${durationText(warmUp.countFrom)}` : ' and cut'}.`,
  }[shift.start]
  return {
    start,
    'length of a run': `${shift.campaign > 1 ? `${shift.campaign} shifts in a row of` : 'A shift of'} ${durationText(shift.length)}${shift.runOut > 0 ? `, and ${durationText(shift.runOut)} to run out` : ''}: ${shift.start === 'steady' ? 'a part of a run without end' : 'it ends with the shift'}.`,
    'number of runs and estimation': `${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : 'shifts'}${hasDesigns ? ' at most of each design' : ''}, with independent random numbers. ${estimation}`,
  }
}

const implementation = ({ made }: StudyFacts): Items => ({
  program: `tapeshift ${made.version}, an engine for discrete events with one pending time a piece, on Node ${made.node}.`,
  'random numbers': `A stream of its own for each shift, piece and purpose, seeded by "${made.seed}"; one number a draw, by inversion.`,
  execution: `Shifts are simulated by threads; the result does not depend on their number. The same again: ${made.repeat}`,
  system: [
    'Any machine with that version of Node gives the same bytes.',
    'the machine and the time it took, where that matters',
  ],
})

const trust = ({ about, hasHand }: StudyFacts): Items => ({
  verification: `Cases, tape and time balance in every shift, or the study ends with an error.${hasHand ? ' Figures worked by hand stand beside the simulated ones, with the reason for each difference.' : ''}`,
  validation: told(
    about?.validatedBy,
    'what the model was held against (study: validated-by)',
    'Not validated: no plant data are named.',
  ),
  sensitivity: [
    'See what matters most by changing one input at a time.',
    'how the answer changes with the inputs that nobody measured',
  ],
  'limits of validity': 'The section on limits. Nothing here holds for another line, mix or crew.',
})
