/** The starter scenario that `tapeshift new` writes: it runs as it stands and explains each key in a line. */
export const starterScenario = `# yaml-language-server: $schema=./scenario.schema.json
# A sealing line for tapeshift. It runs as it stands: tapeshift run FILE
# Every number carries its unit: 24 m/min or 80 ft/min, 400 mm or 15.75 in, 90 s, 8 h, 9 kg or 20 lb, 15 cases/min, 0.3 %.
# A time that varies is a distribution: {exponential: {mean: 4 s}}, {lognormal: {mean: 75 s, cv: 0.8}},
#   {gamma: {mean: 3 s, cv: 0.4}}, {erlang: {mean: 3 s, phases: 4}}, {weibull: {shape: 1.4, scale: 9 h}},
#   {triangular: {low: 2 s, mode: 2.6 s, high: 4 s}}, {uniform: {low: 1 s, high: 3 s}},
#   {normal: {mean: 3 s, sd: 0.4 s, at-least: 1 s}}, {observed: {file: stops.csv, column: repair, unit: s}}, or minor and major ones by shares:
#   {mixture: [{share: 75 %, law: {lognormal: {mean: 50 s, cv: 0.5}}}, {share: 25 %, law: 6 min}]}.
# Say how well you know a value, where you can; what says nothing is taken as exact:
#   a count: chance: 20 in 40000 cases, after: 16 in 640 h; a share of a mixture: 30 in 40 stops; none is a count too: 0 in 4000 cases
#   observations that a law was fitted to: {lognormal: {mean: 80 s, cv: 0.8, from: 40}}; observed values speak for themselves,
#     with \`day: date\` in whole days, by that column of the file, for stops of one day may go together
#   a guess, wherever a unit or a factor may stand: {guess: 4 min, between: [2 min, 8 min]}, nine times in ten between the two
# What you leave out has a default; the report lists every one. All figures here are made up: put in your own.

title: My sealing line          # heads the report
target: 10 cases/min            # good cases out over working time (shift less breaks) that the line must hold
display: metric                 # metric | us: units of the report

cases:                          # OUTSIDE dimensions of the closed case; thousands of them may stand in a file beside this one:
# cases: {file: sizes.csv, unit: mm, columns: {name: SKU, length: L, width: W, height: H, share: orders}}   # weight and jam-factor too
  small:
    share: 60                   # share of the arrivals, relative to the other cases
    length: 400 mm              # along the travel; cut to measure: {normal: {mean: 400 mm, sd: 60 mm, at-least: 250 mm, at-most: 600 mm}}, on any side
    width: 300 mm
    height: 250 mm
    weight: 9 kg                # gross
    board: {wall: single, ect: 32 lbf/in}   # as on the board certificate; burst: 200 psi instead of ect if that is what it gives
  large:
    share: 40
    inside: {length: 480 mm, width: 310 mm, height: 280 mm}   # inside dimensions instead; they need the flute
    flute: BC                   # A, B, C, E, F, EB or BC
    weight: 16 kg
    jam-factor: 1.5             # this case jams that much more often
    # for check alone, on any case:
    # contents-value: 80 EUR    # what is lost when one case opens
    # ships-by: pallet          # pallet | parcel | post
    # recycled: true            # liners of much recycled fibre
    # overfill: 4 mm            # how far the contents push the closed flaps up

arrivals:                       # one entry for each place that cases come from
  packing:
    time-between: {exponential: {mean: 5.5 s}}   # one way of five; in its place may stand:
    # rate: 11 cases/min        # evenly spaced
    # by-hour: {cases: [540 cases/h, 720 cases/h, 660 cases/h], spaced: at-random}   # a rate for each hour of the shift, the last one holds on; or evenly
    # orders:                   # runs of one case, in order; before: from the last case of the order before to the first interval
    #   - {case: small, quantity: 1800, time-between: 5 s}
    #   - {case: large, quantity: 900, time-between: {exponential: {mean: 6 s}}, before: 4 min}
    # log: {file: arrivals.csv, time: seconds, case: kind, unit: s}   # recorded times since the start of the shift, and names of cases, by column
    batch: 1                    # cases that come together; not with orders or log
    when-full: wait             # wait (the packers stop) | queue (an unlimited floor stack) | turn-away

line:                           # in the order in which a case travels; an entry passes on to the next one, or says to: NAME
  infeed:
    type: conveyor
    carries: accumulating       # accumulating: cases close up; belt: all stop together; gravity: accumulating without a drive
    length: 10 m
    speed: 20 m/min
    spacing: 20 mm              # room kept between cases
    start-delay: 0 s            # accumulating: time until a case follows the one ahead
    # zone: 762 mm              # accumulating: length of its zones; each case takes whole ones in place of spacing
    # roller-pitch: 75 mm       # from one roller to the next; for check
    # jams: {chance: 0.1 per 1000 cases, clear: 60 s}   # on any piece, with the keys that they have at the sealer
    # right-of-way: NAME        # on any piece: who goes first where several wait to pass their cases on to it
    # side-by-side: 2           # on any piece: so many like it, behind a divert of their own; they merge in what follows
    # divert: {rule: shortest, time: 0 s}   # how that divert shares cases out: shortest | alternate
  sealer:
    type: sealer
    bed: 1.9 m                  # length of the driven belts
    belt-speed: 20 m/min        # not above any head's rated-speed
    flaps: {folded-by: machine, time: 0.8 s}     # time in the flap place before the belts; folded-by: people need a crew with stands-at
    size-setting: {by: machine, time: 0 s, per-mm: {height: 0.01 s, width: 0.01 s}}   # more for each mm that the sizes differ
    # size-setting: {by: crew, between: {small: {large: 6 min}, large: {small: 4 min}}}   # a fixed-size machine, by which follows which: every pair
    heads:                      # top, bottom, left, right; each has its own roll
      top:
        position: 1.2 m         # from the start of the belts
        rated-speed: 24.4 m/min # fastest belt that the head is built for
        takes: [36 mm, 50 mm]   # narrowest and widest tape
        cut: {wipe-travel: 150 mm, reset: 0.45 s}   # belt travel that wipes the trailing leg; time for the arm to swing back
        # drum: 405 mm          # largest diameter of a roll that fits; for check
      bottom:
        position: 0.9 m
    minimum-gap: 300 mm         # between cases on the belts; wipe-travel + speed x reset may need more
    jams:                       # leave out: no jams
      chance: 20 in 40000 cases # as counted; or a share such as 0.5 per 1000 cases
      clear: {lognormal: {mean: 80 s, cv: 0.8, from: 40}}   # with the machine stopped and isolated; fitted to 40 of them
      case-lost: 15 %           # share of the jammed cases that are spoilt
      tape-factor: 1            # what this tape does to the chance
      isolate: 0 s              # to isolate and lock the machine before hands go in, and as long again after; 0 s: clear holds it
      # by: fitter              # the crew that clears it; not given: whoever does jams
    # several kinds by name, each counted apart:
    # jams:
    #   flap: {chance: 4 per 1000 cases, clear: 45 s}
    #   crushed: {chance: 9 in 40000 cases, clear: {lognormal: {mean: 6 min, cv: 0.8}}, case-lost: 100 %, by: fitter, isolate: 60 s}
    breakdowns:                 # leave out: none; may stand on any piece
      after: 16 in 640 h        # from one repair to the next breakdown; or a law such as {weibull: {shape: 1.2, scale: 40 h}}
      counted-in: running-time  # or calendar-time
      repair:                   # or one law, such as {lognormal: {mean: 15 min, cv: 0.7}}
        mixture:
          - {share: 12 in 16 stops, law: {lognormal: {mean: 8 min, cv: 0.6, from: 12}}}
          - {share: 4 in 16 stops, law: {exponential: {mean: 40 min, from: 4}}}
    roll-change:
      time: {lognormal: {mean: 90 s, cv: 0.4}}      # one roll, threading included
      low-tape-warning: 40 m    # tape left when the head gives its warning; none: it runs out unnoticed
      noticed-after: 3          # without a warning: cases that go unsealed until somebody notices
      change: when-empty        # before the case that the roll cannot finish; or at-warning-when-idle, or at-break
      also-below: 60 m          # who changes a roll changes those of the other heads that have less left, in the same visit
    tape-breaks: {chance: 0.2 per 1000, fix: 45 s}     # leave out: none; a chance for each strip
    dwell-spoils: 0 %           # chance that a case that stood under a head when the belts stopped needs taping again
    blade: {service-after: 30000 cuts, time: 10 min}   # leave out: none
    # sensors may stop and start a sealer, a conveyor with a drive or a station; leave out: it runs whenever it can
    # stops-when: {full: outfeed, at: 2 m, for: 3 s}    # a sensor so far from the end of that conveyor has seen a case for so long; or clear: none
    # starts-when: {clear: outfeed, at: 2 m, for: 2 s}  # leave out: once stops-when no longer holds
    # restart: 1.5 s            # running up, from then on
    # speeds: [{of: infeed, above: 60 %, at: 24 m/min, back-below: 50 %}]   # on a sealer or a conveyor: the drive's speed by how full a conveyor is
    # acceleration: 0.5 m/s2    # on a sealer or a conveyor: a start from rest costs speed / (2 x acceleration); leave out: nothing
    # slow-start: {after: 10 min, at: 60 %, for: 3 min, at-shift-start: true}   # on a sealer or a station: slower for a while after it stood long
  outfeed: {type: conveyor, carries: belt, length: 5 m, speed: 24 m/min}
  palletiser:
    type: station               # any place that holds one case for a time
    time: {triangular: {low: 2.2 s, mode: 2.8 s, high: 4 s}}
    servers: 1                  # places that work side by side
    waiting-room: 0             # places to wait before it, or unlimited
    every: {cases: 48, stop: 40 s}   # a planned stop, here the pallet change
    repairs: false              # true: a case that it lets go is closed and no longer rejected
    run-by: machine             # people stop at breaks
    # of a place that people work:
    # by-hour: [100 %, 100 %, 97 %, 93 %]   # their pace in each hour of the shift, the last one holds on
    # handover: 5 min           # nobody works there for so long at the start and at the end of each shift
    # planned:                  # on any piece: it stands for planned work; with needs it runs on until somebody of that crew is there
    #   - {does: cleaning, at: 4 h, takes: 10 min, needs: operators}
    #   - {does: self-test, every: 2 h, takes: 90 s}
  # Ways may part, join and lead back; to: exit is out of the line. For two sealers, rejects and a repair bench:
  # split: {type: divert, rule: alternate, to: [sealer, sealer-b], time: 0 s}   # strictly by turns; or rule: shortest
  # sizes: {type: divert, rule: by-case, to: {small: sealer, large: sealer-b}}  # each case its way
  # look: {type: inspect, time: 1 s, chance: 0.4 %, finds-unsealed: 100 %, rejects-to: bench}   # rejects-to: exit: they leave
  # bench: {type: station, time: 40 s, run-by: people, waiting-room: 5, repairs: true, to: outfeed}

tape:
  width: 48 mm                  # sold as 2 inch; 72 mm is sold as 3 inch
  roll: 1371 m                  # length of a roll
  leg: 70 mm                    # tape down each end of the case
  thickness: 48 um              # film and adhesive
  price: 40 EUR/roll
  stretch: 1 %                  # how much the head stretches it
  lost-per-roll: 4 m            # threading and stub
  # as its data sheet says, for check:
  # adhesion: 5 N/cm            # peel on steel (ASTM D3330; ISO 29862)
  # shear: 1000 min             # static shear on fibreboard (ASTM D3654 procedure B; ISO 29863)
  # tensile: 40 N/cm            # breaking strength (ASTM D3759; ISO 29864); 23 lbf/in
  # elongation: 150 %           # at break (same test)
  # applies-at: [5 degC, 40 degC]   # coldest and warmest at which it may be applied; 41 degF

# closure:                      # how closures are loaded and laid; tapeshift check compares 2 inch with 3 inch tape by it
#   seam-gap: 2 mm              # between the closed outer flaps
#   centring-error: 3 mm        # how far the strip lies off the middle of the seam
#   load: 120 %                 # load that opens the heaviest case, as a share of that on the reference, or a force such as 40 N
#   reopens: {chance: 0.2 per 1000 cases, cost: 12 EUR, repair: 4 min}   # closures that open after the line, and what one costs
#   reference: {note: which one and how it is known to hold, width: 48 mm, leg: 60 mm, seam-length: 400 mm, seam-gap: 1 mm, centring-error: 2 mm, load: 40 N}
# site: {temperature: [10 degC, 30 degC]}   # coldest and warmest at the sealer; for check

crew:                           # who puts stops right
  operators:
    people: 1
    walk: 15 s                  # until they are there
    does: [jams, roll-change, size-setting, blade]   # the most urgent first
    # stands-at: sealer         # standing duty: folds the flaps there while free
    # breaks: [{at: 3 h, for: 30 min}]   # of their own, so that others cover
    # other-work: {share: 30 %, takes: {lognormal: {mean: 4 min, cv: 0.6}}, can-be-left: false}   # beside the line, by chance; true: a stop takes them off it
    # other-work: [{does: labels, every: 20 min, takes: 3 min}]   # or by the time from one piece to the next; one kind or a list
  fitter: {people: 1, walk: {guess: 4 min, between: [2 min, 8 min]}, does: [breakdowns]}   # nobody timed it

shift:
  length: 8 h                   # breaks included
  start: empty                  # empty; carry-over: as the shift before left it; steady: in its stride, the warm-up from empty is cut away
  campaign: 1                   # carry-over, steady: shifts in a row
  start-up: 0 min               # before cases come
  rolls-start: part-used        # full, or used up by a random part as the shift before left them
  breaks: [{at: 2 h, for: 15 min}, {at: 4 h, for: 30 min}, {at: 6 h, for: 15 min}]
  breaks-stop: arrivals-and-manual-work   # or everything
  run-out: 0 min                # extra time after the last arrival to empty the line

money:                          # leave out what you do not know: it is left out of the sum and listed
  currency: EUR
  labour: 30 EUR/h              # one person
  downtime: 0 EUR/h             # an hour in which the sealer stands for a stop of its own
  energy: 0.2 EUR/kWh
  power: {line.sealer: 0.4 kW}  # mean over the shift
  maintenance: 4 %              # a year, of what was bought
  life: 8 yr
  interest: 8 %
  shifts: 480 per yr
  capital: {line.sealer: 20000 EUR, line.infeed: 600 EUR/m}   # of a conveyor also a metre

study:
  shifts: 100                   # more shifts (or campaigns), narrower plus-minus: four times as many halve it
  confidence: 95 %
  seed: first                   # any text; the same seed gives the same shifts
  # for the report, in your words:
  # purpose: Does the new line hold 10 cases/min?      # the question that the study is to answer
  # decision: Whether to order the long infeed, in March, by the works manager
  # data-source: Stop log of line 2, January; all else from quotations
  # validated-by: Line 2 as it is, its counts of two weeks   # what the model was held against

# size:                         # for tapeshift size: what may be bought, and what must hold
#   choose:
#     line.infeed.length: {from: 4 m, to: 12 m, step: 1 m}
#     crew.operators.people: [1, 2]
#   holds: [9 cases/min in 95 % of shifts]     # within 3 %: how near counts as either
#   order: [crew.operators.people]             # of designs that cost the same, the one whose value stands first
#   rising: [line.infeed.length]               # more of it never hurts, as you know

variants:                       # named changes by dotted path; tapeshift run FILE --variant three-inch
  sensors:
    note: a sensor on the outfeed stops the sealer and starts it again, and its belts run faster while the infeed is full
    set:
      line.sealer.speeds: [{of: infeed, above: 60 %, at: 24 m/min, back-below: 50 %}]
      line.sealer.stops-when: {full: outfeed, at: 2 m, for: 3 s}
      line.sealer.starts-when: {clear: outfeed, at: 2 m, for: 2 s}
      line.sealer.restart: 1.5 s
  starts:
    note: the sealer needs time to come to its speed, and after a long stop and at the start of the shift it runs slower for a while
    set:
      line.sealer.acceleration: 0.5 m/s2
      line.sealer.slow-start: {after: 10 min, at: 60 %, for: 3 min, at-shift-start: true}
  three-inch:
    note: 72 mm tape on wide heads
    set:
      tape.width: 72 mm
      tape.price: 60 EUR/roll
      line.sealer.heads.top.takes: [48 mm, 75 mm]
      line.sealer.heads.bottom.takes: [48 mm, 75 mm]
    # pieces too: ways close by themselves, and prices go with what is taken out
    # add: {labeller: {after: sealer, type: station, time: 3 s}}
    # remove: [palletiser]
`
