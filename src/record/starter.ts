/** The starter record that `tapeshift new FILE --record` writes: it explains each key in a line. */
export const starterRecord = `# A plant's record for tapeshift: where its logs are, how they are written, and what their words mean.
# tapeshift fit FILE reads it and gives values for a scenario, with their evidence. Keep the CSV files in this folder.
# Comma, semicolon or tab, decimal comma or point, UTF-8 or Windows-1252 are detected and reported.
# All names here are invented: replace them by the names in your files.

record:
  title: Line 2, January to March
  times: dd.MM.yyyy HH:mm         # how times are written: yyyy MM dd HH mm ss, h and a for am and pm; or iso
  zone: Europe/Berlin             # time zone of the clocks, for summer time; without it times are used as written
  seen-from: 30 s                 # stops shorter than this are not in the log; leave out only if every stop is logged
  # rounded-to: 1 min             # step of the times of stops; found from the file if not given
  # decimal: comma                # or point; found from the file if not given
  # notes: new infeed since 14 February

  shifts:                         # one row for each shift that was run
    file: shifts.csv
    begins: Beginn                # names of columns
    ends: Ende
    good: Gutmenge                # good cases; without them the chance of a jam cannot be calculated
    breaks: [{at: "09:00", for: 15 min}, {at: "12:00", for: 30 min}]   # local time; breaks may also be listed as stops

  stops:                          # one row for each stop; no rows if nothing stopped
    file: stops.csv
    begins: Von
    ends: Bis                     # or lasts: Dauer, with unit: min (s, min, h, h:mm, h:mm:ss, m:ss)
    piece: Anlage                 # not needed if all stops are of one piece
    reason: Grund

  # cases:                        # one row for each case that a scanner or counter saw
  #   file: cases.csv
  #   at: Zeit
  #   times: dd.MM.yyyy HH:mm:ss  # each file may have its own way to write times
  #   kind: Artikel
  #   kinds: {4711: small, 4712: large}   # names of cases in the scenario
  #   source: packing             # entry of arrivals in the scenario

  means:                          # meaning of the plant's reasons in the scenario; reasons without a meaning are listed with their minutes
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
    Palettierer:                  # reasons with another meaning at this piece
      Motor: line.palletiser.breakdowns

  # same: {Kleber alt: Kleber}    # a piece that was renamed: earlier name: present name
`
