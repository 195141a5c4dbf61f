/** Cautions printed with every report: the work that is planned here can hurt people. */

export const cautions: readonly string[] = [
  'Planning aid only: estimates from your inputs, no safety assessment, no machine guarantee and no proof of closure strength.',
  'Drive belts draw in hands, hair and clothing where they meet cases, guides and pulleys. Keep guards fitted; never reach in while belts run.',
  'Each taping head holds a cutting blade. Stop the drives, isolate power and release air before loading or threading tape, cleaning or changing a blade.',
  'Clear jams only with the machine stopped and isolated under your lockout procedure (29 CFR 1910.147; ISO 14118). Clearing times here assume that; do not shorten them by leaving it out.',
  'Do not bypass guards or interlocks to reach a rate shown here. A competent person does the risk assessment (ISO 12100; EN 415-7; EN 619; ANSI/PMMI B155.1).',
  'Check the lifting of rolls mounted overhead and of heavy cases (NIOSH Publication 94-110; ISO 11228-1).',
  'Tape width, leg and pattern must be proved on the real case by closure and distribution tests (ASTM D4169, ISTA series).',
  'Local codes, the machine’s manual and licensed practice come before anything printed here.',
]
