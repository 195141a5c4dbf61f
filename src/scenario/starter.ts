/** The starter scenario that `tapeshift new` writes: it runs as it stands and explains each key in a line. */
export const starterScenario: string = `# yaml-language-server: $schema=./scenario.schema.json
# A sealing line for tapeshift. It runs as it stands: tapeshift run FILE
# Every number carries its unit: 24 m/min or 80 ft/min, 400 mm or 15.75 in, 90 s, 8 h, 9 kg or 20 lb, 15 cases/min, 0.3 %.
# A time that varies is a distribution: {exponential: {mean: 4 s}}, {lognormal: {mean: 75 s, cv: 0.8}},
#   {gamma: {mean: 3 s, cv: 0.4}}, {erlang: {mean: 3 s, phases: 4}}, {weibull: {shape: 1.4, scale: 9 h}},
#   {triangular: {low: 2 s, mode: 2.6 s, high: 4 s}}, {uniform: {low: 1 s, high: 3 s}},
#   {normal: {mean: 3 s, sd: 0.4 s, at-least: 1 s}}, {observed: {file: stops.csv, column: repair, unit: s}}, or minor and major ones by shares:
#   {mixture: [{share: 75 %, law: {lognormal: {mean: 50 s, cv: 0.5}}}, {share: 25 %, law: 6 min}]}.
# Say how well you know a value, if you can. Values without such evidence are taken as exact:
#   a count: chance: 20 in 40000 cases, after: 16 in 640 h; a share of a mixture: 30 in 40 stops; none is a count too: 0 in 4000 cases
#   number of observations behind a distribution: {lognormal: {mean: 80 s, cv: 0.8, from: 40}}; observed values need no more;
#     with \`day: date\` whole days are drawn, by that column of the file, because stops of one day may belong together
#   a guess, for any value with a unit and any factor: {guess: 4 min, between: [2 min, 8 min]}, nine times in ten between the two
# Values that you leave out have a default; the report lists each one. All figures here are invented: enter your own.

title: My sealing line          # title of the report
target: 10 cases/min            # required throughput: good cases out / working time (shift without breaks)
display: metric                 # metric | us: units of the report

cases:                          # OUTSIDE dimensions of the closed case. Many cases can be read from a file beside this one:
# cases: {file: sizes.csv, unit: mm, columns: {name: SKU, length: L, width: W, height: H, share: orders}}   # weight and jam-factor too
  small:
    share: 60                   # share of the arrivals, relative to the other cases
    length: 400 mm              # along the travel; cut to measure: {normal: {mean: 400 mm, sd: 60 mm, at-least: 250 mm, at-most: 600 mm}}, on any side
    width: 300 mm
    height: 250 mm
    weight: 9 kg                # gross
    board: {wall: single, ect: 32 lbf/in}   # from the board certificate; burst: 200 psi instead of ect if it gives that
  large:
    share: 40
    inside: {length: 480 mm, width: 310 mm, height: 280 mm}   # inside dimensions instead; they need the flute
    flute: BC                   # A, B, C, E, F, EB or BC
    weight: 16 kg
    jam-factor: 1.5             # this case jams 1.5 times as often
    # only for check, on any case:
    # contents-value: 80 EUR    # loss when one case opens
    # ships-by: pallet          # pallet | parcel | post
    # recycled: true            # liners of much recycled fibre
    # overfill: 4 mm            # how far the contents push the closed flaps up

arrivals:                       # one entry for each place where cases arrive from
  packing:
    time-between: {exponential: {mean: 5.5 s}}   # one way of five; the others are:
    # rate: 11 cases/min        # evenly spaced
    # by-hour: {cases: [540 cases/h, 720 cases/h, 660 cases/h], spaced: at-random}   # a rate for each hour of the shift, the last one continues to the end; or evenly
    # orders:                   # runs of one case, in order; before: from the last case of the order before to the first interval
    #   - {case: small, quantity: 1800, time-between: 5 s}
    #   - {case: large, quantity: 900, time-between: {exponential: {mean: 6 s}}, before: 4 min}
    # log: {file: arrivals.csv, time: seconds, case: kind, unit: s}   # recorded times since the start of the shift, and names of cases, by column
    batch: 1                    # cases that arrive together; not with orders or log
    when-full: wait             # wait (the packers stop) | queue (on the floor, without limit) | turn-away

line:                           # in the order of travel; each piece passes cases to the next one, or gives to: NAME
  infeed:
    type: conveyor
    carries: accumulating       # accumulating: cases close up; belt: all stop together; gravity: accumulating without a drive
    length: 10 m
    speed: 20 m/min
    spacing: 20 mm              # room kept between cases
    start-delay: 0 s            # accumulating: delay until a case starts after the one ahead
    # zone: 762 mm              # accumulating: length of a zone; each case takes whole zones, and spacing is not used
    # roller-pitch: 75 mm       # from one roller to the next; for check
    # jams: {chance: 0.1 per 1000 cases, clear: 60 s}   # on any piece, with the same keys as at the sealer
    # right-of-way: NAME        # on any piece: the piece that goes first if several wait to pass cases to this one
    # side-by-side: 2           # on any piece: number of pieces like this, after a divert of their own; they merge in the next piece
    # divert: {rule: shortest, time: 0 s}   # how this divert divides the cases: shortest | alternate
  sealer:
    type: sealer
    bed: 1.9 m                  # length of the driven belts
    belt-speed: 20 m/min        # not above any head's rated-speed
    flaps: {folded-by: machine, time: 0.8 s}     # time to fold the flaps, in the place before the belts; folded-by: people needs a crew with stands-at
    size-setting: {by: machine, time: 0 s, per-mm: {height: 0.01 s, width: 0.01 s}}   # extra time for each mm of difference in size
    # size-setting: {by: crew, between: {small: {large: 6 min}, large: {small: 4 min}}}   # a fixed-size machine: extra time for each change, every pair
    heads:                      # top, bottom, left, right; each has its own roll
      top:
        position: 1.2 m         # from the start of the belts
        rated-speed: 24.4 m/min # fastest belt that the head is built for
        takes: [36 mm, 50 mm]   # narrowest and widest tape
        cut: {wipe-travel: 150 mm, reset: 0.45 s}   # belt travel to wipe the trailing leg; time for the arm to swing back
        # drum: 405 mm          # largest roll diameter that fits; only for check
      bottom:
        position: 0.9 m
    minimum-gap: 300 mm         # between cases on the belts; wipe-travel + speed x reset may need more
    jams:                       # leave out: no jams
      chance: 20 in 40000 cases # as counted; or a share such as 0.5 per 1000 cases
      clear: {lognormal: {mean: 80 s, cv: 0.8, from: 40}}   # with the machine stopped and isolated; fitted to 40 jams
      case-lost: 15 %           # share of the jammed cases that are spoilt
      tape-factor: 1            # factor on the chance for this tape
      isolate: 0 s              # to isolate and lock the machine before anyone reaches in, and the same again after; 0 s: included in clear
      # by: fitter              # the crew that clears it; if not given: any crew that does jams
    # several kinds by name, each counted separately:
    # jams:
    #   flap: {chance: 4 per 1000 cases, clear: 45 s}
    #   crushed: {chance: 9 in 40000 cases, clear: {lognormal: {mean: 6 min, cv: 0.8}}, case-lost: 100 %, by: fitter, isolate: 60 s}
    breakdowns:                 # leave out: none; may stand on any piece
      after: 16 in 640 h        # from one repair to the next breakdown; or a distribution such as {weibull: {shape: 1.2, scale: 40 h}}
      counted-in: running-time  # or calendar-time
      repair:                   # or one distribution, such as {lognormal: {mean: 15 min, cv: 0.7}}
        mixture:
          - {share: 12 in 16 stops, law: {lognormal: {mean: 8 min, cv: 0.6, from: 12}}}
          - {share: 4 in 16 stops, law: {exponential: {mean: 40 min, from: 4}}}
    roll-change:
      time: {lognormal: {mean: 90 s, cv: 0.4}}      # one roll, threading included
      low-tape-warning: 40 m    # tape left when the head gives a warning; none: the roll runs out unnoticed
      noticed-after: 3          # without a warning: number of unsealed cases until somebody notices
      change: when-empty        # before the case that the roll cannot finish; or at-warning-when-idle, or at-break
      also-below: 60 m          # with a roll change, rolls of other heads with less tape left are changed too
    tape-breaks: {chance: 0.2 per 1000, fix: 45 s}     # leave out: none; a chance for each strip
    dwell-spoils: 0 %           # chance that a case needs taping again if it was under a head when the belts stopped
    blade: {service-after: 30000 cuts, time: 10 min}   # leave out: none
    # sensors may stop and start a sealer, a conveyor with a drive or a station; if left out, it runs whenever it can
    # stops-when: {full: outfeed, at: 2 m, for: 3 s}    # the sensor at this distance from the end of the conveyor has seen a case for this time; clear: it has seen no case
    # starts-when: {clear: outfeed, at: 2 m, for: 2 s}  # if left out: when stops-when is no longer true
    # restart: 1.5 s            # delay from then until it runs
    # speeds: [{of: infeed, above: 60 %, at: 24 m/min, back-below: 50 %}]   # on a sealer or a conveyor: speed of the drive by how full a conveyor is
    # acceleration: 0.5 m/s2    # on a sealer or a conveyor: a start from rest costs speed / (2 x acceleration); if left out: nothing
    # slow-start: {after: 10 min, at: 60 %, for: 3 min, at-shift-start: true}   # on a sealer or a station: slower for some time after a long stop
  outfeed: {type: conveyor, carries: belt, length: 5 m, speed: 24 m/min}
  palletiser:
    type: station               # any place that holds a case for some time
    time: {triangular: {low: 2.2 s, mode: 2.8 s, high: 4 s}}
    servers: 1                  # places that work in parallel
    waiting-room: 0             # places to wait before it, or unlimited
    every: {cases: 48, stop: 40 s}   # a planned stop, here the pallet change
    repairs: false              # true: it closes cases, and they are no longer rejected
    run-by: machine             # people stop at breaks, machines continue
    # for a place run by people:
    # by-hour: [100 %, 100 %, 97 %, 93 %]   # their pace in each hour of the shift; the last value continues to the end
    # handover: 5 min           # nobody works here for this time at the start and at the end of each shift
    # planned:                  # on any piece: it stops for planned work; with needs it keeps running until somebody of this crew arrives
    #   - {does: cleaning, at: 4 h, takes: 10 min, needs: operators}
    #   - {does: self-test, every: 2 h, takes: 90 s}
  # Ways may divide, merge and lead back; to: exit is out of the line. For two sealers, rejects and a repair bench:
  # split: {type: divert, rule: alternate, to: [sealer, sealer-b], time: 0 s}   # strictly in turn; or rule: shortest
  # sizes: {type: divert, rule: by-case, to: {small: sealer, large: sealer-b}}  # each kind of case has its way
  # look: {type: inspect, time: 1 s, chance: 0.4 %, finds-unsealed: 100 %, rejects-to: bench}   # rejects-to: exit: they leave
  # bench: {type: station, time: 40 s, run-by: people, waiting-room: 5, repairs: true, to: outfeed}

tape:
  width: 48 mm                  # sold as 2 inch; 72 mm is sold as 3 inch
  roll: 1371 m                  # length of a roll
  leg: 70 mm                    # length of tape down each end of the case
  thickness: 48 um              # film and adhesive
  price: 40 EUR/roll
  stretch: 1 %                  # how much the head stretches it
  lost-per-roll: 4 m            # lost in threading and at the end of the roll
  # from its data sheet, only for check:
  # adhesion: 5 N/cm            # peel on steel (ASTM D3330; ISO 29862)
  # shear: 1000 min             # static shear on fibreboard (ASTM D3654 procedure B; ISO 29863)
  # tensile: 40 N/cm            # breaking strength (ASTM D3759; ISO 29864); 23 lbf/in
  # elongation: 150 %           # at break (same test)
  # applies-at: [5 degC, 40 degC]   # lowest and highest temperature for applying it; 41 degF

# closure:                      # load on closures and accuracy of the tape; tapeshift check uses it to compare 2 inch with 3 inch tape
#   seam-gap: 2 mm              # between the closed outer flaps
#   centring-error: 3 mm        # distance of the strip from the middle of the seam
#   load: 120 %                 # load that opens the heaviest case: a share of the load on the reference, or a force such as 40 N
#   reopens: {chance: 0.2 per 1000 cases, cost: 12 EUR, repair: 4 min}   # closures that open after the line, and the cost of one
#   reference: {note: which one and how you know that it holds, width: 48 mm, leg: 60 mm, seam-length: 400 mm, seam-gap: 1 mm, centring-error: 2 mm, load: 40 N}
# site: {temperature: [10 degC, 30 degC]}   # lowest and highest temperature at the sealer; only for check

crew:                           # people who clear stops
  operators:
    people: 1
    walk: 15 s                  # time to walk to a stop
    does: [jams, roll-change, size-setting, blade]   # tasks, the most urgent first
    # stands-at: sealer         # folds the flaps there while free
    # breaks: [{at: 3 h, for: 30 min}]   # own breaks, so that others can cover
    # other-work: {share: 30 %, takes: {lognormal: {mean: 4 min, cv: 0.6}}, can-be-left: false}   # work beside the line, at random; true: a stop interrupts it
    # other-work: [{does: labels, every: 20 min, takes: 3 min}]   # or by the time from one job to the next; one kind or a list
  fitter: {people: 1, walk: {guess: 4 min, between: [2 min, 8 min]}, does: [breakdowns]}   # nobody timed it

shift:
  length: 8 h                   # breaks included
  start: empty                  # empty; carry-over: as the shift before left it; steady: steady state, the warm-up is removed
  campaign: 1                   # carry-over, steady: number of shifts in a row
  start-up: 0 min               # time before cases arrive
  rolls-start: part-used        # full, or partly used by a random share
  breaks: [{at: 2 h, for: 15 min}, {at: 4 h, for: 30 min}, {at: 6 h, for: 15 min}]
  breaks-stop: arrivals-and-manual-work   # or everything
  run-out: 0 min                # extra time after the last arrival to empty the line

money:                          # leave out what you do not know: such costs are left out of the sum and listed
  currency: EUR
  labour: 30 EUR/h              # one person
  downtime: 0 EUR/h             # an hour in which the sealer is down for its own stops
  energy: 0.2 EUR/kWh
  power: {line.sealer: 0.4 kW}  # mean over the shift
  maintenance: 4 %              # share of the purchase price, a year
  life: 8 yr
  interest: 8 %
  shifts: 480 per yr
  capital: {line.sealer: 20000 EUR, line.infeed: 600 EUR/m}   # for a conveyor also per metre

study:
  shifts: 100                   # more shifts (or campaigns) make the plus-minus smaller: four times as many halve it
  confidence: 95 %
  seed: first                   # any text; the same seed gives the same shifts
  engine: ahead                 # or events: the same shifts, slower, for those who doubt
  # for the report, in your words:
  # purpose: Does the new line hold 10 cases/min?      # the question of the study
  # decision: Whether to order the long infeed, in March, by the works manager
  # data-source: Stop log of line 2, January; all else from quotations
  # validated-by: Line 2 as it is, its counts of two weeks   # what the model was compared with

# size:                         # for tapeshift size: choices and promises
#   choose:
#     line.infeed.length: {from: 4 m, to: 12 m, step: 1 m}
#     crew.operators.people: [1, 2]
#   holds: [9 cases/min in 95 % of shifts]     # within 3 %: misses of this size do not matter
#   order: [crew.operators.people]             # if designs cost the same, earlier values are better
#   rising: [line.infeed.length]               # more of it never hurts

variants:                       # named changes, by path; tapeshift run FILE --variant three-inch
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
    # add or remove pieces too: the line closes the gap, and prices of removed pieces are removed
    # add: {labeller: {after: sealer, type: station, time: 3 s}}
    # remove: [palletiser]
`
