# What hosebib says, in English. One idea a sentence, 20 words at most, plain words.
# Numbers, units and times are printed before they go in. es.ftl holds the same messages with the same arguments.

### Openings

signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
urgency-now = Now
urgency-soon = Soon
urgency-plan = Plan

### Days, months, lists

day-mon = Mon
day-tue = Tue
day-wed = Wed
day-thu = Thu
day-fri = Fri
day-sat = Sat
day-sun = Sun
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
list-and = { $first } and { $last }
list-or = { $first } or { $last }

### Events

event-arrived = arrived
event-leveled = leveled
event-jacks-down = jacks down
event-chocked = chocked
event-power-on = power on
event-power-lost = site power lost
event-power-back = power back
event-water-on = water on
event-water-off = water off
event-in-service = open for guests
event-closed = closed
event-waste-pumped = waste pumped out
event-fresh-filled = fresh tank filled
event-fresh-drained = fresh tank drained
event-filter-serviced = filter cleaned or changed
event-fuse-replaced = fuse replaced
event-breaker-reset = breaker reset
event-regulator-fitted = regulator fitted
event-heater-on = heater on
event-restocked = restocked
event-cleaned = cleaned
event-winterized = winterized
event-hitched = hitched
event-left = left the site
event-returned = back in the yard
event-power-off = power off
event-heater-off = heater off
event-unhitched = unhitched
event-jacks-up = jacks up
event-stowed = stowed
event-lights-checked = tow lights checked

### Faults

fault-low-flow = weak water
fault-no-water = no water
fault-no-lights = no lights
fault-no-power = no power
fault-breaker-trip = breaker trips
fault-gfci-trip = GFCI trips
fault-pump-running = pump will not stop
fault-pump-dead = pump dead
fault-no-heat = no heat
fault-no-cooling = no cooling
fault-no-hot-water = no hot water
fault-leak = leak
fault-frozen = frozen
fault-toilet-clog = toilet clogged
fault-toilet-running = toilet runs on
fault-odor = bad smell
fault-spill = sewage spill
fault-gauge-stuck = gauge stuck
fault-not-level = not level
fault-damage = damage
fault-fan-dead = fan dead
fault-battery-low = battery low
fault-lock-jam = lock jammed
fault-no-sound = no sound
fault-shock = electric shock
fault-fuse-blown = fuse blown
fault-sink-clog = sink clogged
fault-out-of-supplies = out of supplies
fault-gas-illness = someone sick from gas or fumes
fault-hot-plug = hot plug
fault-cord-damaged = damaged cord
fault-tire = tire trouble
fault-fire = fire
fault-person-trapped = someone locked in
fault-person-hurt = someone hurt

### Readings

level-empty = empty
level-full = full
taps-shut = with taps shut
taps-running = with taps running
reading-pressure = water { $value }
reading-supply = supply { $value } before the regulator
reading-flow = flow { $value }
reading-hose = hose { $value }
reading-waste = waste { $level }
reading-waste-gal = waste { $level } ({ $floor ->
    [yes] at least
   *[no] about
} { $gallons })
reading-waste-held = waste { $value }
reading-fresh = fresh { $level }
reading-fresh-gal = fresh { $level } ({ $floor ->
    [yes] at least
   *[no] about
} { $gallons })
reading-fresh-held = fresh { $value }
reading-pumped = { $value } hauled
reading-air = outside { $value }
reading-inside = inside { $value }
reading-low = forecast low { $value }
reading-humidity = humidity { $value }
reading-wind = wind { $value }
reading-slope = { $value } off level
reading-volts = mains { $value }
reading-battery = battery { $value }
reading-cords = { $value ->
    [one] 1 cord live
   *[other] { $value } cords live
}
reading-cord = cord { $value }
reading-fuel = fuel { $value }
reading-guests = { $value ->
    [one] 1 guest
   *[other] { $value } guests
}
reading-eta = there in { $value }
reading-amps = { $value }
reading-amps-circuit = circuit { $circuit } { $value }
reading-circuits-live = { $count ->
    [0] no circuit live
    [one] circuit { $circuits } live
   *[other] circuits { $circuits } live
}

### Logged

logged = Logged for { $unit }: { $what }.
logged-at = Logged for { $unit }, { $time }: { $what }.
logged-site = Logged for { $unit } at { $site }: { $what }.
logged-site-at = Logged for { $unit } at { $site }, { $time }: { $what }.
logged-cleared = fixed: { $faults }
logged-too-old = That is too old to change what is known now.
all-well = { $unit }: all within limits.
context-last = No unit named, so taken as { $unit }, your last.
context-answered = Taken as { $unit }, as you answered.
context-only = No unit named, so taken as { $unit }, the only one at your job.
taken = Read { $pairs }.
taken-pair = { $typed } as { $read }

### Not understood, not logged

unclear-other = Not logged: { $quote }. I do not understand it. Send the unit, what you read, and the number.
unclear-more = { $count ->
    [one] One more part was not clear. Please send it again by itself.
   *[other] { $count } more parts were not clear. Please send them again, one at a time.
}
unclear-two-values = Not logged: { $quote } gives two values for one reading. Send the right one alone.
unclear-range = Not logged: { $quote } is a range. Send one number, your best reading.
unclear-no-place = Not logged: { $quote }. Which reading is that number? Say pressure, waste, fresh, outside or volts with it.
unclear-out-of-range = Not logged: { $quote } cannot be right. Please read it again, and send it with its unit of measure.
unclear-doubt = Not logged: { $quote } sounds unsure. Have a look, then send what you find.
unclear-which-unit = Not logged: { $quote }. Which unit is it? Send the unit number with it.
unclear-which-tank = Not logged: { $quote }. Is that waste or fresh? Send "waste" or "fresh" with the level.
unclear-unit-of-measure = Not logged: { $quote }. Is that psi or bar? Send the number with it.
unclear-order = Nothing changed: { $quote }. Records change by reports only. Send each unit with what you see, or "undo".
unclear-past = Not logged: { $quote } is from an earlier day. Did it happen today? Then send it with "today".
unclear-question-mark = Not logged: { $quote }. Is it so, or are you asking? Send it without the question mark.
unclear-correction = Not logged: { $quote }. I cannot tell what it corrects. Send unit and reading again in full.
unclear-done = Not logged: { $quote }. Which task is done? Send "done" and the task number.
aside-plan = Not logged, as it is not done yet: { $quote }. Tell me when it is done.
aside-condition = Not logged, as it says "if": { $quote }. Tell me when it happens.
aside-request = Not logged as a report: { $quote } asks for work.
aside-past = Not logged, as it is from before: { $quote }.
aside-quote = Not logged, as it quotes someone: { $quote }. Send it in your own words if it is so.
aside-question = Not logged, as it asks: { $quote }.

### Questions

ask-which-unit = Which unit is this for? Send its number.
ask-which-unit-of = Which unit is this for: { $units }?
ask-what-value = What is { $quote }? Answer with one word: psi, waste, fresh, outside or volts.
ask-what-value-on = What is { $quote } on { $unit }? Answer with one word: psi, waste, fresh, outside or volts.
ask-taps-shut = Was the pressure on { $unit } read with taps running or shut?
ask-before-regulator = Was the pressure on { $unit } read before or after the regulator?
step-other = What do you find on { $unit }? Answer yes, no or skip.

### Hints

hint = { $hints }.
hint-why = "why"
hint-done = "done { $id }"
hint-pressure = send the new pressure

### Why

why-head = Why: { $name }.
why-head-unit = Why { $unit }: { $name }.
why-fact = { $name }: { $value } ({ $origin })
why-formula = Sum: { $formula }
why-source = Source: { $source }
why-said = You reported it. No sum is behind it.
why-more = There is more advice: { $names }. Ask "why" with a word of it.
why-nothing = I gave no advice lately, so there is nothing to explain.
origin-read = read on site
origin-spec = from the fleet files
origin-assumed = assumed, nobody told me
origin-computed = worked out
origin-limit = the limit
source-common-practice = common practice, no published source

### Tasks

task-pump-out = pump-out
task-refill = refill
task-drain = drain
task-regulator = regulator
task-filter = filter
task-heater = heater
task-repair = repair
task-electrician = electrician
task-plumber = plumber
task-check-in = check-in
task-other = job
task-truck-by = truck on site by { $time }
task-by = by { $time }
task-call-by = call by { $time }
task-call-now = call now
task-nobody-called = Nobody called yet.
task-nobody-has-it = Nobody has it yet.
task-has-it = { $who } has it.
task-is-done = Done.
task-is-dropped = Dropped.
task-is-late = It is late.
task-late = Late: task { $task }
task-opened = New task { $task }
task-moved = New time: task { $task }
task-stands = Task { $task }
task-reopened = Open again: task { $task }
task-taken = Task { $task }: { $who } has it.
task-done = Task { $task }: done.
task-dropped = Task { $task }: dropped, { $reason }.
tail-nobody-called = Nobody called yet: task { $id }.
tail-taken = { $who } has task { $id }.
tail-task = Task { $id }.
tasks-head = { $count ->
    [one] One open task:
   *[other] { $count } open tasks, soonest first:
}
tasks-none = No open tasks.
task-unknown = There is no task { $id }. Nothing changed. Send "tasks" for the list.
task-already-closed = Task { $id } is closed already. Nothing changed.

### Forecast

forecast-none = Nothing to forecast.
forecast-of = { $unit }:
forecast-no-job = { $unit } is at no job. Nothing to forecast.
forecast-waste-now = Waste is at { $limit } or over by now.
forecast-waste-at = Waste at { $limit } about { $likely } ({ $early } to { $late }).
forecast-waste-perhaps = Waste at { $limit } about { $likely }, not before { $early }. It could stay below { $limit }.
forecast-waste-early = Waste could reach { $limit } from { $early } on. It may well stay below { $limit }.
forecast-waste-never = Waste should stay below { $limit } for this job.
forecast-fresh-now = Fresh water is at { $limit } or under by now.
forecast-fresh-at = Fresh water down to { $limit } about { $likely } ({ $early } to { $late }).
forecast-fresh-perhaps = Fresh water down to { $limit } about { $likely }, not before { $early }. It could stay above { $limit }.
forecast-fresh-early = Fresh water could be down to { $limit } from { $early } on. It may well stay above.
forecast-fresh-never = Fresh water should stay above { $limit } for this job.
forecast-battery-at = Battery at half charge about { $likely } ({ $early } to { $late }), at { $amps }.
forecast-battery-about = Battery at half charge about { $likely }, at { $amps }.
forecast-battery-long = Battery lasts over 3 days at { $amps }.
forecast-stuck = The gauge has not moved as it should. Do not trust it.
forecast-misread = The last gauge reading fits nothing else. Please read it again.

### Status and history

status = { $unit }: { $stage }.
status-site = { $unit } at { $site }: { $stage }.
status-last-word = Last word { $age } ago, { $who }.
status-no-word = No word from it yet.
status-read = { $time }: { $what }
status-faults = Wrong now: { $faults }.
status-fault = { $fault } since { $time }
history = { $unit }, newest first:
history-line = { $time } { $who }: { $what }
history-none = No reports on { $unit } yet.
stage-unknown = no word yet
stage-yard = in the yard
stage-hitched = hitched or on the road
stage-setting-up = setting up
stage-in-service = open
stage-closed = closed

### What the desk finds in a message

desk-unknown-unit = There is no unit { $name }. Nothing logged for it. Did you mean { $near }?
desk-unknown-unit-alone = There is no unit { $name }. Nothing logged for it. Send the right number.
desk-implausible = Not logged: { $value } { $what ->
    [pumped] hauled is more than the waste tank holds
    [fresh] is more than the fresh tank holds
   *[other] is more than the waste tank holds
}, { $limit }. Please read it again.
desk-implausible-circuit = Not logged: { $value } on circuit { $circuit }. This unit has { $limit ->
    [one] 1 circuit
   *[other] { $limit } circuits
}. Which one is it?
desk-not-allowed-dispatcher = Nothing changed. Only a dispatcher may do that. Ask yours.
desk-not-allowed-tech = Nothing changed. Only a tech or a dispatcher may do that. Ask one of them.
odd-time = Not logged: I cannot place the time { $quote }. Send a clock time such as 14:30.
unreadable = I cannot read a { $kind ->
    [voice] voice message
    [sticker] sticker
    [video] video
    [photo] photo without words
   *[other] message of that kind
}. Nothing logged. Please write what you see.
nothing-logged = Nothing logged. Send the unit and what you see: 12 pressure 50 tank 1/2.
greeting = Hello { $who }. Send the unit and what you see: 12 pressure 50 tank 1/2. "help" shows more.
stranger = This chat is for invited people only.

### Orders and their answers

undone = Taken back: your report of { $time } on { $units }. It counts no more.
undo-nothing = Nothing to take back. I keep your own reports for 24 h.
edit-taken = Your edit takes the place of what you sent at { $time }.
edit-undone = Your edit takes back what you sent at { $time }. Nothing new logged.
late-message = Your message of { $time } came in just now. It is logged for that time.
late-meanwhile = Newer reports came in since. This advice goes by the newest.
plan-which-unit = Nothing set yet: { $quote }. Which unit is it for? Send it again with the unit number.
watch-set = I will tell you when { $unit } reaches { $what }.
watch-set-below = I will tell you when { $unit } is down to { $what }.
watch-past = { $unit } is there already: { $what }. No watch set.
watch-hit = You asked to know: { $unit } { $what }, reported by { $who }.
got-it = Noted: { $what }. It will not come up again unless it gets worse.
got-it-nothing = Nothing is waiting for a "got it".
got-it-by = { $who } has noted: { $what }.
never-mind-question = Question dropped. Nothing logged for it.
never-mind-watch = Your watch on { $unit } is off.
never-mind-nothing = No question is open.
order-not-yet = I cannot do that yet. Nothing changed.
order-which-task = Which task? Send the word with the task number. "tasks" lists them.
drop-needs-reason = Why drop it? Send "drop { $id }" with the reason.
move-needs-time = To when? Send "move { $id } 19:30" with your own time.
log-of = { $who }, newest first:
log-line = { $time } { $unit }: { $what }
log-none = { $who } has no reports in the last two days.
log-who = I know nobody called { $quote }. Send a name from the crew list.
tell-sent = Passed on to { $who }.
tell-from = From { $who }: { $quote }
tell-who = I know nobody called { $quote }. Nothing passed on. Send "tell", the name and your words.
override-logged = Override on { $unit } logged in your name. Reason: { $quote }.
override-needs-reason = Send "override", the unit and the reason.
taught = From now on I read { $word } as { $meaning }.
teach-how = Send "teach", the new word, "=" and a word I know: teach honey tank = waste.
note-taken = Note on { $unit } kept: { $quote }. It comes up at each arrival until cleared.
sum-result = { $name }: { $value }. Source: { $source }
sum-how = I do not know that sum. Send for instance: sum drop 16 amps 150 ft 14 gauge.
sum-unknown = I know these sums: { $names }.
sum-never = never
sum-assumed = Taken, as you gave none: { $what }.
sum-missing = For that sum I also need: { $what }.
sum-out-of-range = Those numbers cannot be right. Nothing computed.
sum-drop = voltage drop
sum-drop-pct = of 120 V
sum-freeze = standing hose at freezing in
sum-blocked = ice can block it after a further
sum-hose = hose loss
sum-flow = most flow that leaves 20 psi
sum-battery = battery to half charge
sum-chill = wind chill
sum-heat = heat index
sum-fill = time to fill
sum-tank = waste tank to 85 % in
sum-queue = mean wait
sum-weight = weight of the liquid
sum-need-amps = amps
sum-need-feet = length in feet
sum-need-gauge = wire gauge
sum-need-inches = hose size
sum-need-flow = flow in gpm
sum-need-pressure = pressure in psi
sum-need-temperature = air temperature
sum-need-wind = wind
sum-need-percent = percent
sum-need-gallons = gallons
sum-need-per-hour = uses an hour
sum-need-stalls = stalls
sum-need-number = a number
not-logged-disk = Not logged yet: I cannot write right now. I will log it once I can. No need to send it again.
not-logged-disk-again = Not logged: I cannot write right now. Please send it again later.
not-logged-broken = Not logged: something went wrong with this message. I kept its text. Tell your dispatcher.

### Alarms to a dispatcher

alarm-danger = { $signal } { $unit }: { $who } reports { $what } at { $site }. Phone them now.
alarm-danger-no-site = { $signal } { $unit }: { $who } reports { $what }. Phone them now.
alarm-person = { $signal }: { $who } reports { $what }. Phone them now.
alarm-answer = Answer "got it" to stop this alarm for all.
alarm-driving = { $who } is on the road. Phone them, do not text.

### Help

help-driver =
    Send the unit and what you see, in your own words:
      12 pressure 50 tank 1/2 temp 20
      14 arrived, chocked. 9 no hot water
      12 pumped 380 gal
    Ask: "status 12", "forecast 12", "history 12", "tasks", "why".
    "done 41" closes task 41, "take 41" makes it yours.
    "undo" takes back your last report.
    "if 12 hits 3/4 call me" sets a watch.
    I advise. Local code and licensed trades decide.
help-tech =
    { help-driver }
    As a tech: "drop 41" with a reason, "move 41 19:30".
help-dispatcher =
    { help-tech }
    As a dispatcher: "digest", "log" with a name. "got it" stops an alarm for all.

### The demo

demo-greeting =
    This is a demo with an invented company. It is { $time } there, and you are { $name }.
    Try: unit 12 pressure 95 tank 3/4 temp -5
    "help" shows more, and ctrl-D ends it.
demo-data = Its records are kept in { $folder }.

### Short names of findings, for lists

name-water-over-pressure = water pressure too high
name-water-under-pressure = water pressure low
name-water-pressure-falling = water pressure falling
name-water-hose-undersized = hose too small
name-water-fresh-endurance = fresh water running out
name-water-backflow = backflow risk
name-waste-book-pump-out = pump-out to book
name-waste-close-now = waste tank full
name-waste-spill = sewage spill
name-waste-dropped-unexplained = waste level fell unexplained
name-waste-gauge-doubtful = gauge doubtful
name-cold-freeze-soon = freezing
name-cold-tank-heater-on = tank heater
name-cold-no-cold-package = no cold package
name-cold-winterize = winterize
name-cold-crew-cold = cold for the crew
name-heat-crew-heat = heat for the crew
name-power-shock = electric shock
name-power-low-voltage = voltage low
name-power-high-voltage = voltage high
name-power-over-current = too many amps
name-power-cord-drop = voltage lost in the cord
name-power-cord-overloaded = cord overloaded
name-power-too-few-circuits = too few circuits
name-power-shared-circuit = circuit shared
name-power-on-battery = running on battery
name-power-battery-low = battery low
name-power-generator = generator too small
name-crowd-under-served = too few stalls
name-site-not-level = not level
name-site-not-chocked = not chocked
name-site-set-up-next = set-up goes on
name-site-wind = wind
name-tow-waste-aboard = waste aboard
name-tow-fresh-aboard = fresh water aboard
name-tow-not-ready = not ready to tow
name-tow-overweight = overweight
name-trouble-low-flow = weak water
name-trouble-no-water = no water
name-trouble-no-lights = no lights
name-trouble-no-power = no power
name-trouble-breaker-trip = breaker trips
name-trouble-gfci-trip = GFCI trips
name-trouble-pump-running = pump will not stop
name-trouble-pump-dead = pump dead
name-trouble-no-heat = no heat
name-trouble-no-cooling = no cooling
name-trouble-no-hot-water = no hot water
name-trouble-leak = leak
name-trouble-frozen = frozen
name-trouble-toilet-clog = toilet clogged
name-trouble-toilet-running = toilet runs on
name-trouble-odor = bad smell
name-trouble-damage = damage
name-trouble-fan-dead = fan dead
name-trouble-lock-jam = lock jammed
name-trouble-no-sound = no sound
name-trouble-fuse-blown = fuse blown
name-trouble-sink-clog = sink clogged
name-trouble-out-of-supplies = out of supplies
name-trouble-gas-illness = someone sick from gas or fumes
name-trouble-hot-plug = hot plug
name-trouble-cord-damaged = damaged cord
name-trouble-tire = tire trouble
name-trouble-fire = fire
name-trouble-person-trapped = someone locked in
name-crew-late-check-in = no word for long
name-crew-person-hurt = someone hurt
name-desk-unknown-unit = unknown unit
name-desk-implausible = a number that cannot be
name-desk-not-allowed = not allowed

### Digest

digest-head = { $time }: { $count ->
    [one] 1 unit
   *[other] { $count } units
}, { $trouble } to look at.
digest-more = { $count ->
    [one] And 1 more with something due. Ask by its number.
   *[other] And { $count } more with something due. Ask by number.
}
digest-good-order = In good order: { $count } ({ $stages }).
digest-well = in order
digest-no-word = no word
