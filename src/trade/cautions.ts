/** Cautions printed with every report: the work that is planned here can hurt people. */

export const cautions: readonly string[] = [
  'Planning aid only: estimates from your inputs, no safety assessment, no machine guarantee and no proof of closure strength.',
  'Drive belts form in-running nips: they draw in hands, hair and loose clothing where they meet cases, guides and pulleys. Keep guards fitted; never reach in while belts run (29 CFR 1910.212 and 1910.219).',
  'Each taping head holds a cutting blade, covered by a spring guard but sharp. Stop the drives, isolate power and release air before loading or threading tape, cleaning or changing a blade.',
  'Clear jams only with the machine stopped and isolated under your lockout procedure (29 CFR 1910.147; ISO 14118); an emergency stop alone is not isolation. Clearing times here assume that; do not shorten them by leaving it out.',
  'Do not bypass guards or interlocks to reach a rate shown here. A competent person does the risk assessment (ISO 12100; ISO 13857; ISO 13849-1; ISO 14119; EN 415-7; EN 619; ASME B20.1; ANSI/PMMI B155.1).',
  'No conveyor may feed one that stands: interlock them (ILO code, conveyors, 7.1.7).',
  'Check the lifting of rolls mounted overhead and of heavy cases (NIOSH Publication 94-110; ISO 11228-1).',
  'Gross weight and united inches must not exceed what the board certificate allows (Item 222; Rule 41).',
  'Tape width, leg and pattern must be proved on the real case by closure and distribution tests (ASTM D4169, ISTA series).',
  'Local codes, the machine’s manual and licensed practice come before anything printed here.',
]

/** The caution in one line of a terminal, where the full list is left to the report. It cannot be switched off. */
export const cautionLine = 'Estimates only: isolate before reaching in; manual and local codes come first.'
