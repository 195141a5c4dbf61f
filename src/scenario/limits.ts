/** Limits and usual numbers of shifts, which the command line tells of without reading a scenario or a question. */

/** More shifts than this are no study but a mistake of the keyboard; they would also not fit into memory. */
export const mostShifts = 100_000

/** Shifts where nobody says: of a run or a design, of one that goes on until something is known at most, and of a design to be bought at most. */
export const usualShifts = { each: 100, untilKnown: 10_000, toSize: 2000 }

/** Fewest draws of the inputs: of fewer their variance is hardly known, of 10 it is off by half on average. Project rule. */
export const leastDraws = 10
/** And most. */
export const mostDraws = 1000
