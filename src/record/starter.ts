/** The starter record that `tapeshift new FILE --record` writes: it explains each key in a line. */
export const starterRecord = `# A plant's record for tapeshift: where its logs lie, how they are written, and what its words mean.
# tapeshift fit FILE reads it and gives values for a scenario, with what they rest on. The CSV files stay in this folder.
# Comma, semicolon or tab, decimal comma or point, UTF-8 or Windows-1252 are found by themselves and told.
# All names here are made up: put in those of your files.

record:
  title: Line 2, January to March
  times: dd.MM.yyyy HH:mm         # how times are written: yyyy MM dd HH mm ss, h and a for am and pm; or iso
  zone: Europe/Berlin             # where the clocks hang, so that summer time is known; leave out: times stand as they are
  seen-from: 30 s                 # shorter stops are not in the log; leave out only if every stop is
  # rounded-to: 1 min             # grain of the times of stops; found where it is not given
  # decimal: comma                # or point; found where it is not given
  # notes: new infeed since 14 February

  shifts:                         # one row for each shift that was run
    file: shifts.csv
    begins: Beginn                # names of columns
    ends: Ende
    good: Gutmenge                # good cases; without them no chance of a jam can be told
    breaks: [{at: "09:00", for: 15 min}, {at: "12:00", for: 30 min}]   # local time; breaks may also stand among the stops

  stops:                          # one row for each stop; none is needed where nothing happened
    file: stops.csv
    begins: Von
    ends: Bis                     # or lasts: Dauer, with unit: min (s, min, h, h:mm, h:mm:ss, m:ss)
    piece: Anlage                 # leave out where all stops are of one piece
    reason: Grund

  # cases:                        # one row for each case that a scanner or counter saw
  #   file: cases.csv
  #   at: Zeit
  #   times: dd.MM.yyyy HH:mm:ss  # every file may write its times in its own way
  #   kind: Artikel
  #   kinds: {4711: small, 4712: large}   # names of cases in the scenario
  #   source: packing             # entry of arrivals in the scenario

  means:                          # what the plant's reasons are in the scenario; those that are left out are listed with their minutes
    Stau Einlauf: line.sealer.jams
    Band leer: line.sealer.roll-change
    Formatwechsel: line.sealer.size-setting
    Bandriss: line.sealer.tape-breaks
    Messer: line.sealer.blade
    Motor: line.sealer.breakdowns
    Palettenwechsel: line.palletiser.every
    Pause: break
    kein Karton: starved
    Stau dahinter: blocked
    Besprechung: other
    Palettierer:                  # a reason that means something else at this piece
      Motor: line.palletiser.breakdowns

  # same: {Kleber alt: Kleber}    # a piece that was given another name midway: earlier name, name now
`
