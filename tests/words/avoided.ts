/** Words that texts for people avoid, each with what to write instead: readers run a plant, and English may be their second language. */

/** One row of the list. */
export interface Avoided {
  /** What is looked for, in small letters. */
  words: RegExp
  /** What to write instead. */
  instead: string
}

/**
 * The list: add a row where a reader stumbled. Use the words of the trade (running, starved, blocked, down, rate, throughput, work
 * in process, buffer, changeover, downtime, availability, target), short sentences, and "is not a" instead of "is no".
 */
export const avoided: readonly Avoided[] = [
  { words: /\bmend(s|ed|ing)?\b/, instead: 'fix, correct' },
  { words: /\bleaves? it\b/, instead: 'pass on, come out; or: keep it as it is' },
  { words: /(^|[,;:(] )of (it|them)\b/, instead: 'of which, or the noun itself' },
  { words: /\b(?<!is )held in\b/, instead: 'reached in, contained in' },
  { words: /\bnot passed (by|in)\b/, instead: '95 % of the cases take less; at most, for 95 % of the time' },
  { words: /\bplaces at work\b/, instead: 'utilization' },
  { words: /\bwhoever\b|\bwho asks\b/, instead: 'anyone who, the people who' },
  { words: /\bhangs? (on|together)\b/, instead: 'depend on' },
  { words: /\bholds on\b/, instead: 'continues to the end' },
  { words: /\b(goes|go) on\b/, instead: 'continue' },
  { words: /\brests? on\b|\bresting on\b/, instead: 'is based on, evidence' },
  { words: /\bluck\b/, instead: 'random variation (of the simulation)' },
  {
    words: /\bnot known of the inputs\b|\bwhat the inputs may be\b/,
    instead: 'uncertainty of the inputs; draws of the inputs',
  },
  { words: /\bits stride\b/, instead: 'steady state; before that: warm-up' },
  { words: /\bpencil\b/, instead: 'hand calculation' },
  { words: /\b(put|puts|putting) out\b/, instead: 'the output is, reach' },
  { words: /\bcould put\b/, instead: 'capacity' },
  { words: /\bput(s|ting)? right\b/, instead: 'fix, clear (a stop)' },
  {
    words: /(?<!\b(there|where|if there) )\b(is|it is) no (?!(longer|more)\b)[a-z`$]/,
    instead: 'is not a',
  },
  { words: /\bseldom\b/, instead: 'rarely' },
  { words: /\boftener\b/, instead: 'more often' },
  { words: /\banew\b/, instead: 'again' },
  { words: /\bpoorest\b/, instead: 'worst' },
  { words: /\bthe like\b/, instead: 'an example, or nothing' },
  {
    words: /\bso (many|long) (as|of|after|at)\b|\bfor so long\b|\bin so many\b/,
    instead: 'this number of, for this time',
  },
  { words: /\bwhat of it\b|\bsuch as wait\b/, instead: 'say it in a sentence' },
  { words: /\bgive or take\b/, instead: '±' },
  { words: /\b(taken|takes|take) for granted\b/, instead: 'assumed' },
  { words: /\bslip of the pen\b/, instead: 'misspelt' },
  { words: /\bbeforehand\b/, instead: 'in advance' },
  { words: /\bworked out\b/, instead: 'calculated' },
  { words: /\bin place of\b/, instead: 'instead of' },
  {
    words: /\b(not|is|are|was|were|be) told\b|\btold apart\b/,
    instead: 'listed, decided, known; too few to tell',
  },
  { words: /\bwhat (comes to|arrives)\b/, instead: 'arrivals' },
  { words: /\b(kept|keeps|keep) (days |some )?back\b/, instead: 'held out' },
  { words: /\bquarter of a case\b/, instead: '0.25 cases' },
]
