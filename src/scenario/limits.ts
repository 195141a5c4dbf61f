/** Limits of the format that the command line tells of without reading a scenario. */

/** More shifts than this are no study but a mistake of the keyboard; they would also not fit into memory. */
export const mostShifts = 100_000
