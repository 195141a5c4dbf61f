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
import type { LineResult } from './line-result.js'
import type { StudyDocument } from './made.js'
import { isUnsourced } from './rests-on.js'

/** What all kinds of study tell. */
export interface StudyFacts extends Pick<StudyDocument, 'made' | 'shift' | 'assumed'> {
  about: About | undefined
  warmUp: WarmUp | null
  /** The line, or the first of those compared. */
  line: Pick<LineResult, 'equipment' | 'arrivals' | 'crew' | 'engine'> | null
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
      'access to the model':
        'The scenario is saved beside this report as scenario.yaml, with all defaults written out. The program that reads it is named above.',
    },
    Trust: trust(facts),
  }
  return {
    title: 'Study checklist',
    note: 'The items of STRESS-DES (Monks and others, Journal of Simulation 13 (2019) 55-67; from memory, in other words). Below them: what makes a model credible. Items that only you know are marked "To fill in".',
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
  const outputs = `All measures are defined in the section on measures. Plus-minus: ${percentText(made.confidence)} confidence.`
  return {
    purpose: told(about?.purpose, 'the question in your words (study: purpose)', question),
    decision: told(about?.decision, 'what is decided by the answer, by whom and when (study: decision)'),
    'outputs of the model': line ? outputs : [outputs, 'no design was simulated'],
  }
}

function logic({ line, trials }: StudyFacts): Items {
  const kinds = Object.entries(line?.equipment ?? {}).flatMap(([name, { type, pieces }]) =>
    pieces ? [] : `${name} (${type})`,
  )
  const named = (all: object | undefined) => Object.keys(all ?? {}).join(', ') || 'none'
  return {
    'overview of the line': `Cases pass ${kinds.join(', ') || 'no piece'}, in the order of the scenario unless the scenario sends them another way.`,
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
  const defaults = `${counted(assumed.length, 'default value')}, each listed with its basis.`
  return {
    'sources of data': told(
      about?.dataSource,
      'what was measured, when and by whom; what was estimated (study: data-source)',
    ),
    'input parameters': `The section on assumptions lists what the scenario gives, distributions with their parameters: ${counted(about?.given.length ?? 0, 'line')}.`,
    'preparing the data': [
      'Recorded times and logs are used as they are. Nothing is fitted or cleaned here.',
      'what was done to the data before they were put into the scenario',
    ],
    assumptions:
      weak > 0 ? [defaults, `your own values for the ${weak} without a published source`] : defaults,
  }
}

function experiments({ shift, made, warmUp, hasDesigns, estimation }: StudyFacts): Items {
  const start = {
    empty: 'Every shift starts with an empty line; no warm-up is removed.',
    'carry-over':
      'The first shift of a campaign starts empty. Each other shift starts with the line as the shift before left it.',
    steady: `The line runs without end. The warm-up is found by MSER-5${warmUp ? ` and cut at ${durationText(warmUp.countFrom)}` : ' and cut'}.`,
  }[shift.start]
  return {
    start,
    'length of a run': `${shift.campaign > 1 ? `${shift.campaign} shifts in a row of` : 'A shift of'} ${durationText(shift.length)}${shift.runOut > 0 ? `, and ${durationText(shift.runOut)} to run out` : ''}: ${shift.start === 'steady' ? 'a part of an endless run' : 'it ends with the shift'}.`,
    'number of runs and estimation': `${grouped(made.shifts, 0)} ${shift.campaign > 1 ? 'campaigns' : 'shifts'}${hasDesigns ? ' at most of each design' : ''}, with independent random numbers. ${estimation}`,
  }
}

/** What is said of who simulated; nothing of older documents. */
const simulatedBy = {
  ahead:
    ' The pieces stand in a row. While nothing disturbs it, each case is calculated from those ahead of it; events do the rest. The option --engine events simulates the same shifts by events alone.',
  events: ' Every case moves by events.',
}

const implementation = ({ made, line }: StudyFacts): Items => ({
  program: `tapeshift ${made.version}, a discrete-event simulator, on Node ${made.node}.`,
  'random numbers': `Each shift, piece and purpose has its own stream of random numbers, seeded by "${made.seed}". Each draw takes one number, by inversion.`,
  execution: `Shifts are simulated by threads; the result does not depend on their number.${line?.engine ? simulatedBy[line.engine] : ''} To repeat: ${made.repeat}`,
  system: [
    'Any computer with this version of Node gives the same result, byte for byte.',
    'the computer and the computing time, where that matters',
  ],
})

const trust = ({ about, hasHand }: StudyFacts): Items => ({
  verification: `Cases, tape and time balance in every shift; if not, the study ends with an error.${hasHand ? ' The report compares hand calculation with simulation and gives the reason for each difference.' : ''}`,
  validation: told(
    about?.validatedBy,
    'what the model was compared with (study: validated-by)',
    'Not validated: no plant data are named.',
  ),
  sensitivity: [
    'Change one input at a time to see what matters most.',
    'how the answer changes with the inputs that nobody measured',
  ],
  'limits of validity': 'See the section on limits. The results do not apply to another line, mix or crew.',
})
