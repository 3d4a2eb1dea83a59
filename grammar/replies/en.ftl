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
event-left = departure from the site
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
fault-burnt-smell = burnt smell
fault-co-alarm = CO alarm or exhaust fumes
fault-fire = fire
fault-runaway = trailer loose or rolling
fault-person-trapped = someone locked in
fault-person-hurt = someone hurt
fault-person-cold = someone suffering from cold
fault-generator-inside = generator or fuel burner inside
fault-no-backflow = nothing against backflow
fault-gas-smell = smell of gas or fuel
fault-breakaway-fault = breakaway trouble
fault-brake-fault = trailer brake trouble
fault-coupler-fault = coupler or pin trouble
fault-chain-fault = safety chain trouble
fault-tow-lights-fault = tow light out
fault-jack-fault = jack stuck

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
reading-volts-high = one leg { $value }
reading-volts-low = the other { $value }
reading-battery = battery { $value }
reading-cords = { $value ->
    [one] 1 cord live
   *[other] { $value } cords live
}
reading-cord = cord { $value }
reading-cord-gauge = cord { $value }
reading-fuel = fuel { $value }
reading-guests = { $value ->
    [one] 1 guest
   *[other] { $value } guests
}
reading-eta = there in { $value }
reading-stalls-out = { $value ->
    [one] { $value } stall out
   *[other] { $value } stalls out
}
reading-amps = { $value }
reading-amps-circuit = circuit { $circuit } at { $value }
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
logged-many = Logged for { $units }: { $what }.
logged-many-at = Logged for { $units }, { $time }: { $what }.
logged-many-site = Logged for { $units } at { $site }: { $what }.
logged-many-site-at = Logged for { $units } at { $site }, { $time }: { $what }.
logged-cleared = fixed: { $faults }
logged-too-old = That is too old to change what is known now.
read-well = { $unit }: what you read is within limits. Still open: { $names }.
all-well = { $unit }: all within limits.
danger-guessed = No unit named: taken as { $unit }, your last. If it is not { $unit }, say which.
danger-guessed-site = No unit named: taken as { $unit }, at { $site }. If it is not { $unit }, say which.
danger-site-differs = You named { $unit } and { $site }. By plan { $unit } stands at { $was }. Are you at { $site }: say { $address }.
danger-site-beside = You named { $unit } and { $site }. Are you at { $site }: say { $address }.
context-last = No unit named, so taken as { $unit }, your last.
context-site = No unit named, so taken as { $unit }, at { $site }.
context-answered = Taken as { $unit }, as you answered.
context-only = No unit named, so taken as { $unit }, the only one at your job.
taken = Read { $pairs }.
taken-pair = { $typed } as { $read }

### Not understood, not logged

unclear-other = Not logged: { $quote }. I do not understand it. Send the unit, what you read, and the number.
unclear-of-a-part = Not logged: { $quote } is of a part, not of the air outside. The air is sent as in "12 outside 20".
unclear-below-what = Not logged: { $quote }. Below what? Send the temperature with its sign, such as -5.
unclear-beside-unplaced = Not logged: { $quote } stands beside a number I cannot place. Send each value with its name.
unclear-no-measure = Not logged: { $quote }. I do not know the word after the number. Send it with psi, gal, volts or ft.
unclear-static-and-flowing = Not logged: { $quote } gives two pressures. Send the one to log alone, as in "12 pressure 52 taps running".
unclear-strange-word = Not logged: { $quote } has a word I do not know, and it may change the number. Send it again.
unclear-more = { $count ->
    [one] One more part was not clear. Please send it again by itself.
   *[other] { $count } more parts were not clear. Please send them again, one at a time.
}
unclear-two-values = Not logged: { $quote } gives two values for one reading. Send the right one alone.
unclear-range = Not logged: { $quote } is a range. Send one number, your best reading.
unclear-bound = Not logged: { $quote } says over, under or almost. Send the number you read.
unclear-no-place = Not logged: { $quote }. Which reading is the number? Say pressure, waste, fresh, outside or volts with it.
unclear-no-number = Not logged: { $quote }. What did you read? Send it with the number.
unclear-implausible = Not logged: { $quote } cannot be right. Please read it again, and send it with its unit of measure.
unclear-doubt = Not logged: { $quote } sounds unsure. Have a look, then send what you find.
unclear-which-unit = Not logged: { $quote }. Which unit is it? Send each unit with its own reading.
unclear-which-tank = Not logged: { $quote }. Is that waste or fresh? Send "waste" or "fresh" with the level.
unclear-which-volts = Not logged: { $quote }. Is that mains or battery? Send "outlet" or "battery" with the volts.
unclear-mains-or-lights = Not logged: { $quote }. Is site power out, or only the lights? Send "no power" or "no lights".
unclear-cords-live = Not logged: { $quote }. How many cords have power now? Send it as in "12 2 cords live".
unclear-outlet-power = Not logged: { $quote }. One outlet, and dry? Press reset once on its GFCI. It trips again: leave it off until an electrician looks. All dead: send it as in "12 no power".
unclear-stopped-where = Not logged: { $quote }. Is the trailer at its job site? If so, send it as in "12 arrived".
unclear-done-in-part = Not logged: { $quote }. How much is left in the tank? Send it as in "12 waste 1/2".
unclear-nearly-level = Not logged: { $quote }. Level it until the bubble stands in the middle. Then send "leveled", or how far it is off, as in "slope 1%".
unclear-spaced-minus = Not logged: { $quote }. Is that number below zero? Send it with the minus close by, as in -5.
unclear-bar-or-psi = Not logged: { $quote }. Is that bar or psi? Send the number with it.
unclear-f-or-c = Not logged: { $quote }. Is that °F or °C? Send the number with it.
unclear-feet-or-metres = Not logged: { $quote }. Is that feet or metres? Send the number with it.
unclear-percent-or-gallons = Not logged: { $quote }. Is that percent or gallons? Send the number with it.
unclear-order = Nothing changed: { $quote }. Records change by reports only. Send each unit with what you see, or "undo".
unclear-earlier-day = Not logged: { $quote } is from an earlier day. If it was today, send it without the day.
unclear-asks-something = Not logged: { $quote }. What would you like to know? "help" shows what I can answer.
unclear-which-to-mend = Not logged: { $quote }. I cannot tell what it corrects. Send unit and reading again in full.
unclear-done-what = Not logged: { $quote }. What is done? Send the work, as in "12 pumped", or "done" and the task number.
unclear-not-understood = I did not understand { $quote }. Send the unit and what you see: 12 pressure 50 tank 1/2.
unclear-not-understood-again = I did not understand { $quote }. "help" shows how to write.
unclear-what-is-wrong = Not logged: { $quote }. What is wrong with it? Say it as in "12 no lights" or "12 pump dead".
aside-plan = Not logged, as it is not done yet: { $quote }. Tell me when it is done.
aside-wish = I made no task of { $quote }. To tell the crew: "tell NAME" and your words.
aside-condition = Not logged, as it has not happened: { $quote }. Tell me when it does.
aside-past = Not logged, as it is from before: { $quote }.
aside-earlier-day = Not logged, as it is from an earlier day: { $quote }.
aside-quotation = Not logged, as it quotes someone: { $quote }. If it is so, send it in your own words.

### Questions

ask-which-unit = Which unit is this for? Send its number.
ask-which-unit-of = Which unit is this for: { $units }?
ask-unit-yes = Is this for { $unit }? Answer yes, or send the unit.
ask-still = Still not logged: { $what }. Which unit is it for?
ask-which-unit-for = Which unit is { $quote } for? Send its number.
ask-which-unit-for-yes = Is { $quote } for { $unit }? Answer yes, or send the unit.
ask-which-unit-for-of = Which unit is { $quote } for: { $units }?
ask-which-mend = Nothing changed yet. Do you mean { $ways }?
ask-which-task = Which task is done: { $tasks }? Answer with its number.
ask-task-done = Is task { $tasks } done? Yes or no.
mend-unit = unit { $unit }
mend-on = { $what } on { $unit }
ask-what-value = What is { $quote }? Answer with one word: psi, waste, fresh, outside or volts.
ask-cords-live = How many cords on { $unit } have power now? Send the number.
ask-what-value-on = What is { $quote } on { $unit }? Answer with one word: psi, waste, fresh, outside or volts.
ask-taps-shut = Was the pressure on { $unit } read with taps running or shut?
ask-before-regulator = Was the pressure on { $unit } read before or after the regulator?
ask-when = Not logged yet: { $quote } on { $unit }. When was that? Send a clock time such as 14:30, or "now".
ask-leaves-unit = Does { $unit } leave the site with you? Yes or no. Nothing logged yet.
ask-leaves = Does a trailer leave with you? Send its number, or no.
ask-override-why = Not logged yet. Why override on { $unit }? Send the reason in a few words.

### Answers to questions

still = Still on { $unit }: { $names }.
answer-beside = Also on { $unit }: { $names }. "more" tells all.
answer-then = Then:
answer-more = "more" tells all of { $unit }.
answer-next-none = Nothing is wrong on { $unit }, by what was reported. Send what you read: pressure, tank, volts, temp.
answer-drain-heater = Its breaker off first, and wait until it is cold. Shut the supply, open a hot tap, then its drain valve. Tag the breaker: it stays off until the tank is full again.
answer-tow-waste = No, not on a road, however short. Liquid shifts the weight, and axles and brakes may be over their limit. Pump it out first. On the site itself the dispatcher decides.
answer-tow-must-be-empty = Yes, both tanks, for any road, however short. Liquid shifts the weight, and axles and brakes may be over their limit. What no pump gets out may stay, 5 % at most. On the site itself the dispatcher decides.
answer-hold-breaker = No. A breaker that is held on lets the wires burn. Leave it off, and unplug what runs on it.
answer-backfeed = No. The pins of such a cord are live, and power fed backwards kills people on the line. Each cord runs from its own outlet to its own inlet.
answer-hot-swap = No. Loads off first, then the breaker at the source. Then swap it with dry hands, and switch on again.
answer-daisy-chain = No. Each cord goes straight to an outlet and a circuit of its own. Joined cords and shared outlets heat up and burn.
answer-thaw = Power off at wet parts. Shut the supply, open the nearest tap. Warm air or warm towels, from the open end back. Then fill slowly and look for splits.
answer-breakaway-test = Hitched and chocked, light plug out of the truck. Pull the pin: the brakes must lock. Pull ahead gently: they must hold. Push the pin back at once, plug in. They do not hold: charge its battery, and stay off the road.
answer-hook-up-water = Flush the hose first. Then spigot, vacuum breaker, regulator, drinking-water hose, inlet. Open slowly, look for drips, and send the pressure at the inlet.
answer-level-how = On the hook, side to side first: blocks under the low wheels. Then chock both sides. Unhitch, then front to back with the tongue jack. Stabilizers last: they only steady it.
answer-reset-more = No. Two resets at most, and it has had them. Leave it off, unplug what runs on it, and have an electrician look.
answer-cannot-tell = I cannot tell whether that is safe, or how it is done. Ask the dispatcher, or who is trained for it, before you do it.
answer-flame = No. Never a torch, a flame or a heat gun. Power off at wet parts, shut the supply, open the nearest tap. Warm air or warm towels, from the open end back.
answer-dumped = No. Sewage never goes on the ground, into a ditch or a drain. Stop, keep people off it, call the office.
answer-lost-neutral = DANGER: the neutral may be open. All breakers off now, and leave them off. Nobody switches anything on. Call a licensed electrician and the office.
answer-fuel-heater = No. Electric heat only, from the trailer's own circuits.
answer-generator-place = Outside, 20 ft (6 m) or more from doors, windows and vents. Exhaust away from people. Never in a doorway.
answer-refuel = Switch it off and let it cool first. Then fuel it, away from flame and doors.
answer-antifreeze = Pink antifreeze only, never car antifreeze. Salt only in the waste tank, never on the fresh side. Ask the treatment plant first: salt eats valves.
answer-unclog = No acid, no lye, no pressure washer. Gloves and eye shield on. Plunger first, then a closet auger.
answer-bleach = Only on hard ground and tools, in water: 1/4 cup a gallon (15 ml a litre) for tools. Never mix it, never in the waste tank.
answer-bigger-breaker = No. The breaker protects the wire and the plug, and those stay as thin as they are. Shed load, or use another circuit.
answer-amp-outlet = A { $value } outlet carries { $limit } for hours, no more. That is one AC or one heater, alone on it.
answer-act-unknown = I cannot tell whether that is safe: nothing reported says so. Not sure: leave it and ask the dispatcher or a tech first.
answer-warm-air = A hair dryer only on a GFCI outlet, with dry hands, away from wet parts. Shut the supply, tap open, from the open end back. Never leave it alone.
answer-amp-outlet-small = A { $value } outlet carries { $limit } for hours, no more. An AC or a heater needs 12.5 A: too much for it. Converter and lights only.
answer-unplug = Yes, if you can do it safely: breaker off at the source first, then the cords there. Dry hands, no metal, no water.
answer-wet-hands = No. Wet hands or feet let a current through that can kill. Step out of the water, and dry your hands. Site breaker off first, from dry ground. Then the plug. Cannot reach it dry: leave it, keep people off, call an electrician.
danger-no-shrug = { $unit }: it is not nothing, and it does not wait. No gloves, no test by hand. Nobody uses it until it is cleared.
answer-boiling-water = No. Boiling water splits a cold pipe and scalds, and it freezes again. Warm towels or warm air, tap open first.
answer-power-again = No, not after a shock, a hot plug, a burnt smell or water near power. Leave it off until an electrician has cleared it. Nothing of that: once, and read the volts.
answer-bypass = No. A GFCI that trips has found a fault. Unplug all from it, and plug back one at a time.
answer-reset-again = Once more at most: fully off, then on. Trips again: leave it off. Hot or brown plug: do not reset.
answer-bigger-fuse = No. The same rating only, once. It blows again: there is a short.
answer-tape-cord = No. Power off at the source. Take that cord away and use a good one.
answer-hot-plug = Stop using it. Power off at the source, then unplug it. Replace plug and outlet.
answer-enter-tank = No. Nobody goes into a tank, nor puts head or arms in. Look from outside with a light.
answer-smoke = No, not near the tank, an open valve or the battery. Their gas burns.
answer-regulator-off = No, leave it on. Low flow: clean the inlet filter, look for a kink, use a wider or shorter hose.
answer-drink = No. Tank water is not for drinking.
answer-wrong-hose = A drinking-water hose for fresh water only. The waste hose never goes on the fresh side.
answer-vacuum-breaker = Yes, on the spigot, each time. No hose end in a bucket, a tank or on the ground.
answer-roof = Not in wind, rain, ice or alone. Power off before you open a cover.
answer-jacks-lift = No. They steady it. Level it with blocks first, side to side, then the tongue jack.
answer-chocks = Chock both sides first, always. Then unhitch.
answer-ice-cap = No, not while it may be frozen. Warm it slowly, with warm air or towels.
answer-pump-dry = No. Pump off until the tank is filled.
answer-drip = Only into a safe outdoor drain, and not as a thin drip: that freezes too. Never into the waste tank: it fills it. Better: heat the hose, or drain it.
answer-heat-tape = Yes, if it is listed for that hose or pipe. With foam over it, on a GFCI.
answer-heat-tape-ac = Not on the AC's outlet or circuit: the AC alone takes nearly all of it. Give it a GFCI outlet of its own. Only tape that is listed for that hose or pipe.
answer-if-shocked = Do not touch them. Kill the power at the source: site breaker off, or pull the cord there. Cannot: push them off with dry wood, standing dry. Then the emergency number. No breath: push on the chest. Everybody who was shocked is seen by a doctor.
answer-hose-in-drain = No. Block the drain. Hold it in with soil or absorbent and have it sucked up. Tell your dispatcher.
answer-ac-and-heat = No. AC and heat of one room never run together. Two ACs never on one cord.
answer-water-heater = On only when its tank is full: the hot tap runs with no air. Off before you drain it. Charge the battery first, heat water later.
answer-filter = Shut the spigot, let the pressure off at a sink, then open the cup. Rinse it, close it by hand, open slowly.
answer-battery-charge = No jump start from a truck. Charge it from the converter: feed its circuit. A frozen battery can burst: bring it in first.
answer-hydrant = Only with the water utility's leave, its meter and its backflow device. A regulator goes on first.
answer-alone = Better in twos. Alone: text "going under", the unit and "check me in 15". I ask, and alarm the dispatcher.
answer-level-now = { $unit }: { $read }.
answer-level-since = { $unit }: about { $value } now. Last read at { $time }: { $read }.
answer-level-read = { $unit }, { $time }: { $read }.
answer-level-guessed = { $unit }: nobody has read the waste tank. By the guests it is about { $value }. Read it and send it.
answer-level-waste-unknown = { $unit }: nobody has read the waste tank. Send it: { $unit } tank 1/2.
answer-level-fresh-unknown = { $unit }: nobody has read the fresh tank. Send it: { $unit } fresh 1/2.
answer-level-battery-unknown = { $unit }: nobody has read the battery. Send it: { $unit } battery 12.4 volts.
answer-fresh-on-hose = It is on site water, so the fresh tank does not run down.
answer-battery-on-power = With its converter fed, the battery charges. It runs down only without power.
answer-not-read = { $unit }: nobody has read that yet. Read it and send it.
answer-pumped = { $unit } was last pumped out at { $time }.
answer-pumped-so-much = { $unit } was last pumped out at { $time }: { $value }.
answer-not-pumped = { $unit }: no pump-out is in the book.
answer-truck-promised = The truck for { $unit } is promised for { $time }: task { $id }.
answer-truck-called = The truck for { $unit } was called, no time given: task { $id }. Ask when it comes.
answer-truck-nobody-late = Nobody has called a truck for { $unit } yet. It was to be there by { $due }, { $age } ago: task { $id }.
answer-truck-nobody-due = Nobody has called a truck for { $unit } yet. It must be there by { $due }: task { $id }.
answer-truck-nobody = Nobody has called a truck for { $unit } yet: task { $id }.
answer-no-truck = No truck is asked for on { $unit }. Need one? Send "{ $unit } needs a pump-out".
answer-no-truck-at-all = No truck is asked for on any unit. Name the unit to have its forecast.
answer-ok = Yes: { $what } is good for { $unit }.
answer-ok-nearly = Nearly: { $what } on { $unit } will do for now.
answer-not-ok = No: { $what } is not good for { $unit }.
answer-too-high-no = No: { $what } is not too much for { $unit }.
answer-too-high-yes = Yes: { $what } is too much for { $unit }.
answer-too-low-no = No: { $what } is not too low for { $unit }.
answer-too-low-yes = Yes: { $what } is too low for { $unit }.
answer-but-too-low = Not too much, but too low: { $what } on { $unit }.
answer-but-too-high = Not too low, but too much: { $what } on { $unit }.
answer-bad-no = No: { $what } is good for { $unit }.
answer-bad-yes = Yes: { $what } is not good for { $unit }.
answer-range = Good is { $first } to { $last } with the taps shut.
answer-not-logged = Nothing logged. If you read it, send it with the unit.
answer-general-pressure = 40 to 60 psi (3 to 4 bar) is good. Set the regulator to 45 psi (3 bar). Name the unit for its own limits.
answer-partly = { $unit }: nothing urgent, but not all is well.
answer-cannot = I cannot work that out. Nothing is logged. Ask your dispatcher, or send what you read.
answer-without-if = I cannot reckon with that "if". As it stands now:
answer-truck-call-by = { $unit }: call the truck by { $time } at the latest.
answer-truck-call-now = { $unit }: do not wait. Call the truck now.
answer-ground-rod = I cannot say. The maker's manual and local code tell if that generator needs a rod. Leave its ground as it was built.
answer-level-enough = Up to half a bubble (1 %) will do. Over 2 %: block it up. Over 3 %: move it.
answer-no-blocks = Do not level it on stones, or with the jacks. Get blocks, or find flatter ground. The chocks stay where they are.
answer-small-outlet = A 15 A outlet carries 12 A for hours. One load at most, and none over 12 A by its plate. No AC. Read the volts under load.
answer-house-cord = No thin indoor cord: 16 gauge is too thin for a heater or an AC. Outdoor cord, 12 gauge or thicker, 10 gauge over 50 ft (15 m). Each cord on its own circuit.
answer-well = Yes, by what was reported on { $unit }.
answer-who-last = { $unit }: last word { $age } ago, from { $who }.
answer-who-none = { $unit }: nobody has written about it.
answer-who-road = { $who } is on the way to { $unit }.
answer-who-crew = On the job: { $names }.
answer-trucks-none = No pump truck is wanted or called.
answer-next-job-none = I know of no job for { $unit } in the next two weeks.
answer-next-job = { $unit }: next at { $site }, { $time } to { $last }, { $count } guests.
answer-next-job-full = By the guests alone the waste is at its stop level about { $time }.
answer-next-job-no-water = No water there: bring it full.
answer-next-job-no-power = No power there: the battery alone, or bring a generator.
answer-next-job-nobody = Nobody is named for it.
answer-free = Named for no job and at no trailer, by what I know: { $names }.
answer-free-none = By what I know nobody is free.
answer-takes-waste = { $unit }: about { $count } more uses, then the waste is at { $limit }. Now it is about { $value }.
answer-takes-empty = { $unit }: about { $count } uses from an empty waste tank to { $limit }. Nobody has read it yet.
answer-takes-fresh = { $unit }: about { $count } uses, then the fresh water is low. It ends before the waste is full.
answer-takes-guests = That is about { $count } guests for { $value } open hours. More guests need a truck in between.
answer-generator-size = { $unit }: all loads together run at { $value }. That asks for a generator of { $limit }. Reckoned for { $first } and { $last }.
answer-generator-enough = Yes: { $read } is enough for { $unit }.
answer-generator-tight = No: { $read } runs it, but may not start an AC beside the rest. Start one AC at a time, the heater last.
answer-generator-too-small = No: { $read } is too small for all of { $unit }. Leave an AC or the water heater off, or bring a bigger one.
answer-lasts-yes = Yes: by what I know the waste tank on { $unit } lasts till { $time }.
answer-lasts-no = No: the waste tank on { $unit } will not last till { $time }. It needs a pump-out before.
answer-lasts-perhaps = Not sure: the waste tank on { $unit } may be full before { $time }. Have a truck ready.
done-truck-to-come = Task { $id } stays open: the truck for { $unit } is promised for { $time }. Pumped already? Send "{ $unit } pumped" with the gallons. Not needed? Send "truck for { $unit } cancelled".
answer-guests-told = { $unit }: { $count } guests on the site, counted at { $time }.
answer-guests-booked = { $unit }: { $count } guests are booked. Nobody has counted them yet.
answer-guests-none = { $unit } is at no job now, so no guests are known.
answer-where-road = { $who } is on the road.
answer-where-road-unit = { $who } is on the road with { $unit }, or to it.
answer-where-road-eta = { $who } is on the road, there about { $time }.
answer-where-road-unit-eta = { $who } is on the road with { $unit }, or to it, there about { $time }.
answer-where-last = { $who }: last word { $age } ago, about { $unit } at { $site }.
answer-where-last-no-site = { $who }: last word { $age } ago, about { $unit }.
silent-phone = Phone { $who } again.
silent-phone-near = Phone { $who } again, then whoever wrote from there lately: { $names }.
silent-contact = Ask at the site: { $what }.
silent-then = No answer in 15 min: send somebody to look. "check { $who } in 15" has me ask after them.
aid-told = I told the dispatchers that you need help.
aid-nobody = You need help, and I have no dispatcher to tell. Call your own people.
aid-what = Somebody hurt, or in danger: call the emergency number first. What is wrong there? Send it with the unit.
worry-first = If somebody is hurt or in danger: get people away from it and call the emergency number first.
ask-worry = Is it so? Send what it is and where, like "someone hurt", "gas" or "fire". If not, send "no".
worry-told = { $who } wrote { $quote }. I do not know whether somebody is in danger, and asked. Phone them.
worry-none = { $who } says that nobody is in danger.
worry-dropped = Good: nobody is in danger. If that changes, send it at once.
aid-asks = { $who } needs help: { $quote }. What is wrong was not said: I asked.
aid-asks-on = { $who } needs help on { $unit }: { $quote }. What is wrong was not said: I asked.
aid-written = Written at { $time }, received late. Phone them now.
aid-alone = I alarmed { $names }: you work alone and need help. Stay where it is safe.
aid-alone-told = { $signal }: { $who } works alone and calls for help: { $quote }. Place: { $site }. Phone them now. No answer: send somebody, call emergency.
silent-alone = They work alone: do not wait. Send somebody to look now, and call the emergency number.
silent-road = Who drives does not pick up. Phone again after the arrival. Still nothing 30 min later: send somebody along the road.
silent-hurt = Found hurt, or not waking: call the emergency number first. Never go into a tank after somebody.
silent-hurt-at = Found hurt, or not waking: call the emergency number first. Say { $address }. Never go into a tank after somebody.
answer-where-none = No word from { $who } in the last day.
answer-where-quiet = No word in the last day: { $names }.
answer-late-none = No task is late.
answer-silent-none = Every open unit was heard of in the last 4 open hours.
answer-silent-all-along = { $unit }: no word at all on this job. Doors open since { $time }.
answer-silent = { $unit }: no word for { $age }.
answer-fills = { $unit }: waste { $limit } % about { $time }, maybe { $due }.
answer-fills-now = { $unit }: waste may be at { $limit } % already.
answer-fills-perhaps = { $unit }: waste { $limit } % perhaps from { $time } on.
answer-fills-none = No tank is on its way to its limit, and no pump-out is asked for.
answer-send-someone = I cannot send anybody. Pass it on: "tell NAME take 12 for me".
answer-who-can-go = I cannot send anybody. Ask one: "tell NAME can you go to 12".
answer-did-today = { $who } reported today:
answer-did-nothing = No report from { $who } today.
report-line = { $time } { $unit }: { $what }
answer-greeting = Here. Send what you see, with the unit: 12 pressure 50 tank 1/2. "help" shows more.
answer-what-are-you = I am a bot, not a person. Text me what you read on a trailer. I check it, log it and say what to do. "help" shows how.
answer-stop-texting = Send "quiet 22:00-06:00": at those hours only what cannot wait comes. "got it" stops an alarm. "leave the crew" ends it for good.
answer-my-job = { $site }, with { $units }. Doors open { $time }.
answer-my-job-on = { $site }, with { $units }. Doors open since { $time }.
answer-my-job-ask = No job names you. Ask the dispatcher: "tell { $who } where do I go".
answer-my-job-none = No job names you. Ask your dispatcher.
answer-tonight-freezes = Yes, it freezes here:
answer-tonight-low = low { $value }
answer-tonight-air = { $value } read at { $time }
answer-tonight-mild = No: by the low that was told it stays above freezing.
answer-tonight-unknown = I cannot tell. Nobody told me tonight's low, and no unit read freezing air.
answer-tonight-row = { $unit } at { $site }: { $read }.
answer-tonight-row-what = { $unit } at { $site }: { $read }, { $what }.
answer-tonight-more = More units are out than I list. Name a unit for its own answer.
answer-tonight-tell = Not every site has tonight's low. Send "low tonight 12F", or paste a TAF.
answer-tonight-ask = Not every site has tonight's low. Ask the dispatcher for it.
answer-package-none = No cold package: { $units }.
answer-package-none-out = Of these out now or soon: { $units }. Drain them before it freezes.
answer-package-with = With a cold package: { $units }.
several-left = I have no answer to { $quote }. Ask it on its own, or "tell NAME" it.
question-unknown = I have no answer to that. I know: "status 12", "forecast 12", "who has 12", "what is late", "tasks", "why". To ask a person: "tell NAME ...".
answer-no-word = I have no readings from { $unit }. Send pressure, tank, volts and temp.
answer-not-well = No. { $unit } needs something now.
answer-regulator-yes = Yes. { $unit } gets { $read }, limit { $limit }. Tap off, fit one set to { $value }, open slowly.
answer-regulator-no = Not at { $read }: { $unit } takes up to { $limit }. Read it again at night, and keep one on the truck.
answer-regulator-unread = Read the pressure first, all taps shut. Over { $limit }: yes, set to { $value }.
answer-no-regulator = Shut the tap now. { $unit } takes up to { $limit }, and the site gives { $read }. Fit a regulator set to { $value }, then open slowly.
answer-no-regulator-unread = Shut the tap now. { $unit } takes up to { $limit }, and the pressure here is not known. Fit a regulator set to { $value }, then open slowly.
answer-back-in = No. Nobody goes back into { $unit } yet. The fire service, the gas utility or a licensed electrician clears it first. Tell me who did.
hazard-told = { $signal } { $unit }: { $who } tells of { $what } at { $site }. Phone them.
hazard-no-site = { $signal } { $unit }: { $who } tells of { $what }. Phone them.
hazard-person = { $signal }: { $who } tells of { $what }. Phone them.
on-a-road = On the road: say which road, which way, and the nearest exit or mile.
left-no-address = No address on record: { $unit } is not at a site now. Tell the emergency line the road, the direction and the nearest exit or mile marker.
place-unknown = No address on record: nobody said where { $unit } is now. Say where you are: the street, the gate, what stands near it.
answer-back-on-task = { $unit }: not before a licensed electrician has found it and says that it is safe. They decide, not this bot. Then send "done { $id }".
answer-back-on-free = { $unit }: nothing is logged against it now. Switch all loads off first. Power on once, then read the volts. It trips, tingles or smells: off again, and an electrician decides.
answer-site-empty = Nobody told of a trailer at { $site }, and none is due there now.
answer-danger-open = No. { $unit } has { $what } open. Everybody stays off and out, and what feeds it stays off. Only who may clear it ends that.
danger-used = { $signal } { $unit }: { $what } is still open. Close it at once. Everybody out and away. Nobody uses it.
danger-switched = { $signal } { $unit }: { $what } is still open. Nothing is switched on. Everybody off and out. Power off at the source, if you reach it safely.
danger-switched-gas = { $signal } { $unit }: { $what } is still open. Switch nothing more, neither on nor off: a spark lights gas. Everybody out, upwind. Call the emergency number from outside.
danger-used-told = { $signal } { $unit }: { $who } wrote { $quote }, and { $what } is still open there. Phone them now: everybody out, nothing is switched.
danger-fault = { $signal } { $unit }: { $what } is still open. Everybody stays out and away. Nothing is reset, switched on or repaired there.
danger-fault-gas = { $signal } { $unit }: { $what } is still open. Everybody stays out, upwind. Touch no switch, plug or breaker: a spark lights gas. Nothing is repaired there.
danger-fault-waits = No check starts on { $unit } now: { $what }. Text it again once the danger is over. Then it starts.
danger-packed = { $signal } { $unit }: { $what } is still open. Everybody stays out and away. Nobody packs it up or hitches it. The leaving list starts once the danger is over.
danger-packed-gas = { $signal } { $unit }: { $what } is still open. Everybody stays out, upwind. Touch no switch, plug or breaker: a spark lights gas. Nobody packs it up or hitches it. The leaving list starts once the danger is over.
danger-unread = I could not read { $quote }. Is it a second danger? Send the unit and what it is. The dispatcher is told.
danger-unread-told = { $unit }: { $who } adds { $quote } to the danger there, and I could not read it. Phone them.
danger-confirmed = It stands as a real danger. The dispatcher is told.
danger-confirmed-told = { $unit }: { $who } says again that the danger there is real: { $quote }. Phone them.
danger-freeze-waits = People first. Then, on { $unit }: it freezes and has no power. Drain the hose first, then the lines, then the tanks.
danger-sign-gone = { $unit }: a sign that is gone is no all-clear. Still open there: { $what }. Everybody stays out.
danger-all-well = { $unit }: good that people are well. Still open there: { $what }.
help-over-stands = { $unit }: good that they are looked after. What made them ill can still be there. Nobody goes back in.
closes-shock = A licensed electrician tests it first and says that it is safe. Then text "{ $unit } electrician tested it, safe".
closes-fire = Only the fire service ends it: a fire can start again. Then text "{ $unit } fire dept cleared it".
closes-burnt-smell = The fire service or a licensed electrician finds it safe first. Then text "{ $unit } fire dept cleared it" or "{ $unit } electrician checked it, safe".
closes-gas-illness = Only the fire service or the gas utility ends it, once it is aired. Then text "{ $unit } fire dept cleared it".
closes-co-alarm = Only the fire service or the gas utility ends it, once it is aired. Then text "{ $unit } fire dept cleared it".
closes-gas-smell = Only the fire service or the gas utility ends it, once it is aired. Then text "{ $unit } fire dept cleared it".
closes-generator-inside = Out, all doors open, well aired, and nobody dizzy: then text "{ $unit } is out and aired".
closes-person-hurt = Looked after: text "{ $unit } hurt is over".
closes-person-cold = Warm and looked after: text "{ $unit } hurt is over".
closes-person-trapped = Out and well: text "{ $unit } they are out".
closes-runaway = Once it is still: chock both sides. Then text "{ $unit } chocked".
electrician-came = { $unit }: did the electrician test it, and say that it is safe? Then text "{ $unit } electrician tested it, safe". Until then it stays off.
electrician-came-task = { $unit }: did the electrician find it and mend it? Then text "done { $id }". Until then it stays off.
burner-aired = { $unit }: keep it out, 20 ft (6 m) or more from doors, windows and vents. Headache, dizzy or sick: emergency call.
burner-out = { $unit }: open all doors and vents, and air it well before anybody goes in. Headache, dizzy or sick: emergency call.
shock-stays = { $unit }: a shock that is not felt now can come back. The danger stays. Power off at the source, until a licensed electrician has tested it. Who tested it?
help-called = { $unit }: good. Stay with them until help is there. Say where you are, keep the way free. Looked after: text "{ $unit } hurt is over".
help-unanswered = { $unit }: call again, and from another phone. Ask people near you to call too. Have the site's people get their first-aid help. The dispatcher is told to call. Stay with them.
help-unanswered-told = { $signal } { $unit }: { $who } cannot reach the emergency line. Call it for them now. Then phone { $who }.
both-not-taken = { $quote } is not taken: { $what } is logged on { $unit } alone. On the other one too: send it again with that unit.
help-coming = { $unit }: good. Keep everybody out and away, and the way free for them. Do what they say.
help-over = { $unit }: taken as looked after. Write down what happened while you know it. Dispatcher: "incident { $unit }".
help-better = { $unit }: good, but it stays open. Stay with them until they are looked after. The dispatcher is told. Then text "{ $unit } hurt is over".
help-better-told = { $unit }: { $who } says of the hurt person: { $quote }. It stays open until they are looked after. Phone { $who }.
help-over-who = { $unit }: who is looked after? More than one report of somebody hurt is open there, and it stays open. All of them looked after: text "{ $unit } hurt is over". Somebody is still hurt: emergency number, stay with them.
help-over-none = { $unit }: no report of somebody hurt is open there.
help-over-told = { $unit }: { $who } says that the hurt person is looked after.
hazard-over-told = { $unit }: { $who } says this is over: { $what }.
people-out = { $unit }: good that they are out. Count them. Nobody goes back in.
one-cord-out = { $unit }: leave that cord out. How many cords are still live? Send the number, like "3 cords". None: "power off".
gas-stays = { $unit }: a smell that is gone is no all-clear. The danger stays: everybody out, touch no switch. Who cleared it? Only the fire service or the gas utility can.
answer-regulator-fitted = { $unit } has one since { $time }. It should hold { $value }. Over { $limit } it does not hold: swap it.
answer-set-regulator = Set the regulator on { $unit } to { $value }.
answer-heater-yes = Yes. { $value }: turn on circuit { $circuit } on { $unit }, tank and bay heater. Read its amps.
answer-heater-yes-plain = Yes. { $value }: turn on tank and bay heater on { $unit }. Read their amps.
answer-heater-no = Not yet: { $value } on { $unit }. Turn it on at 40 °F (4 °C) or below.
answer-heater-is-on = { $unit }: it was reported on. Leave it on, and read its amps. A switch proves nothing.
answer-heater-unread = On at 40 °F (4 °C) or below. Nobody read the air at { $unit } today. Send it: { $unit } temp 20.
answer-heater-none = { $unit } has no cold package, so no tank heater. Plan to drain it before it freezes.
answer-heater-none-freezing = { $unit } has no tank heater, and { $value } is freezing. Bay heat on. Drain hose and wet ends.
answer-drain-unread = Nobody read the air at { $unit } today. Send it: { $unit } temp 20. Freezing without power or heat: drain it.
answer-drain-no = No: { $value } is well above freezing.
answer-drain-ready = Not yet at { $value }. Be ready: at freezing, heat the hose, keep it moving, or drain it.
answer-drain-hose = The hose, if nobody can heat it or keep it moving at { $value }. The tanks can stay while the heater runs.
answer-drain-wet-ends = Yes: hose and wet ends now, at { $value }. The tanks too if it gets colder.
answer-drain-all = Yes, all of it, at { $value }. Hose first. Then pump and heater lines. Then the tanks.
answer-freeze-no = It is above freezing at { $unit }, by the last reading.
answer-freeze-unread = Nobody read the air at { $unit } today. Send temperature and wind: { $unit } temp 20 wind 10.
answer-hook-up = Power off at the source first, all breakers in the trailer off. Plug in at the trailer, then at the source. Then power on, one breaker at a time.
answer-hook-up-then = Nothing logged. When it is live, send the cords and the volts, as in "2 cords, 119 V".
answer-patrol-none = No long stay waits for a visit: each has had a word in the last 16 h.
answer-cords = { $unit } needs { $count ->
    [one] one cord
   *[other] { $count } cords
} in this weather, in this order: { $names }. Circuit { $circuit } first: it keeps lights and pumps alive.
answer-cords-offered = The site offers { $count ->
    [one] one cord
   *[other] { $count } cords
}. One cord to an outlet of its own.
answer-tow-no = No. { $unit } must not be towed yet.
answer-tow-not-yet = Not yet. { $unit } is not ready to leave.
answer-tow-left = Still to do or to report: { $names }.
answer-tow-yes = Yes, by what was reported on { $unit }.
answer-open-yes = Yes, by what was reported on { $unit }. Flush each stall, try each tap and lock first.
answer-open-no = Not yet on { $unit }. First:
answer-open-unread = I have no readings from { $unit }. Send pressure, tank, volts and temp first.
answer-pump-out-now = A pump-out is due now: close some stalls and chase the truck.
answer-pump-out-yes = The waste tank on { $unit } will not last this job. It needs a pump-out.
answer-pump-out-perhaps = The waste tank on { $unit } may not last this job. Read it again, and know a truck.
answer-pump-out-no = The waste tank on { $unit } should last this job. No pump-out needed so far.
answer-pump-out-unread = { $unit } is at no job, so I cannot tell. Over half full: pump it. Before a tow: always.

### What a finding asks for, in a few words

do-water-over-pressure = Tap off, regulator on.
do-water-under-pressure = Shut all taps, read the pressure again.
do-water-pressure-falling = Clean the inlet filter.
do-water-hose-undersized = Use a wider or shorter hose.
do-water-fresh-endurance = Fill the fresh tank.
do-water-backflow = Hose ends out of buckets and tanks.
do-truck-called = Ask it to come in time.
do-truck-here = Send the gallons when it is done.
do-truck-missing = It has not come. Phone the hauler, or call another one.
do-waste-book-pump-out = Call the pump truck.
do-waste-close-now = Close stalls, chase the truck.
do-waste-close-now-here = Keep stalls closed until it is pumped.
do-waste-close-now-uncalled = Close stalls, call the truck.
do-waste-spill = Close the unit, block the drains.
do-waste-dropped-unexplained = Look under it for an open valve or a leak.
do-waste-gauge-doubtful = Do not trust the gauge: look down with a light.
do-cold-freeze-soon = Heat the hose, keep it moving, or drain it.
do-cold-tank-heater-on = Tank heater on, read its amps.
do-cold-no-cold-package = Drain hose and wet ends.
do-cold-winterize = Drain it and winterize it.
do-cold-crew-cold = Short turns outside, in twos.
do-heat-crew-heat = Shade and water, in twos.
do-power-shock = Power off at the source.
do-power-low-voltage = AC off, check the cord.
do-power-high-voltage = Read the volts again, electronics off.
do-power-over-current = Shed load on that circuit.
do-power-cord-drop = Use a thicker or shorter cord.
do-power-cord-overloaded = Shed load, feel the plug with power off.
do-power-too-few-circuits = Feed the converter's circuit first.
do-power-shared-circuit = One load at a time on that circuit.
do-power-on-battery = Get power back, or feed the converter's circuit.
do-power-battery-low = Charge the battery, fans off.
do-power-generator = One AC at a time, water heater last.
do-crowd-under-served = Ask for more stalls.
do-site-not-level = Level it.
do-site-not-chocked = Chock both sides.
do-site-set-up-next = Go on with setting up.
do-site-wind = Awnings in, doors held.
do-site-unsafe = Make that safe first.
do-site-icy = Sand the steps, shut that door.
do-tow-waste-aboard = Pump the waste out before you tow.
do-tow-fresh-aboard = Drain the fresh tank before you tow.
do-tow-not-ready = Finish the leaving list.
do-tow-overweight = Empty both tanks.
do-crew-late-check-in = Send a check-in.

### Hints

hint = Send { $hints }.
hint-why = "why"
hint-done = "done { $id }"
hint-pressure = the new pressure

### Why

why-head = Why: { $name }.
why-head-unit = Why { $unit }: { $name }.
why-fact = { $name }: { $value } ({ $origin })
why-book-late = should have been booked { $value } ago ({ $origin })
why-formula = Sum: { $formula }
why-source = Source: { $source }
why-said = You reported it. No sum is behind it.
why-more = There is more advice: { $names }. Ask "why" with a word of it.
why-nothing = I gave no advice lately, so there is nothing to explain.
origin-read = read on site
origin-report = from the weather report
origin-spec = from the fleet files
origin-assumed = assumed, nobody told me
origin-computed = worked out
origin-limit = the limit
source-practice = common practice
source-memory = from memory
why-not-that = I gave no advice on that lately. I can tell why for: { $names }.
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
task-found = {" "}({ $what })
task-truck-by = truck on site by { $time }
task-by = by { $time }
task-call-by = call by { $time }
task-call-now = call now
task-call-late = call now, { $age } late
task-wanted-by = {" "}(wanted by { $time })
task-truck-too-late = If you call now, the truck comes about { $time }: too late. Be ready to close stalls.
task-truck-may-be-late = If you call now, the truck comes about { $time }. That may be too late: be ready to close stalls.
task-truck-to-tow = If you call now, the truck comes about { $time }. Until then it stays where it is.
task-truck-after-wish = If you call now, the truck comes about { $time }: later than wanted.
task-nobody-called = Nobody called yet.
task-nobody-has-it = Nobody has it yet.
task-has-it = { $who } has it.
task-is-done = Done.
task-is-here = The truck is there since { $time }.
task-is-dropped = Dropped.
task-is-late = It is { $age } late.
task-truck-is-over = That was { $age } ago.
task-due-by = By { $time }.
task-was-due = Was due { $time }, { $age } ago.
task-truck-late = Truck late: task { $task } Phone the hauler.
task-late = Late: task { $task }
task-opened = New task { $task }
task-moved = New time: task { $task }
task-stands = Task { $task }
task-reopened = Open again: task { $task }
task-taken = Task { $task }: { $who } has it.
task-done = Task { $task }: done.
task-dropped = Task { $task }: dropped, { $reason }.
task-taken-back = Task { $task }: taken back, no longer needed.
task-no-need = Task { $task }: no longer needed, as the power is back.
task-has-left = Task { $task }: dropped, as the trailer leaves.
task-called = Called.
task-called-for = Called, promised for { $time }.
task-called-by = Called, says { $who }.
task-called-by-for = Called, says { $who }. Promised for { $time }.
tail-called = It was called: task { $id }.
booked-too-late = The tank may be full at { $due }, before the truck at { $promised }. Ask for an earlier one. Else close stalls in time.
booked-too-late-now = The tank may be full before the truck comes at { $promised }. Ask for an earlier one. Else close stalls in time.
wanted-too-late = You want it by { $time }. The tank may be full at { $due }: the task keeps to that.
wanted-too-late-now = You want it by { $time }. The tank may be full by now, so the task stays as due at { $due }.
booked-after-wanted = It is wanted by { $due }, and the truck comes at { $promised }.
booked-replaces = It was promised for { $was } before: { $time } takes its place. Two trucks? Keep the other by "task for { $unit }: second truck at { $was }".
booked-replaces-told = { $who } says the truck for { $unit } comes at { $time }, and not at { $was }.
truck-second = A truck for { $unit } is noted already, for { $time }. It stays. A new time for it: "truck for { $unit } late, 21:00". A second truck: "task for { $unit }: second truck at 21:00".
truck-overtaken = You wrote that at { $time }. The truck for { $unit } was told of anew at { $since }: that stands.
truck-delay-counted = Counted from { $was }, when it was promised for: { $time }. Not so? Send the hour, as in "no wait 8:15".
truck-moved-over = The truck for { $unit } goes to { $to } now. Nobody is called for { $unit }.
truck-off = The truck for { $unit } is not coming. Call another one.
truck-unneeded = The truck for { $unit } is no longer noted. Phone the hauler: I call nobody.
truck-here = The truck is at { $unit }. Send the gallons when it is done, as in "{ $unit } pumped 380 gal".
truck-none = No truck is noted for { $unit }. Nothing changed.
truck-none-booked = No truck is noted as called. Nothing changed.
truck-not-due = The truck for { $unit } is promised for { $time }. Tell me if it is not there then.
truck-no-show = Noted: no truck at { $unit } yet. Call the hauler, or another one.
truck-no-show-late = Noted: no truck at { $unit } yet. It was promised for { $time }, { $age } ago. Call the hauler, or another one.
truck-no-show-told = { $who } says no truck has come to { $unit }. Call the hauler, or another one.
truck-how = Which truck comes when? I noted none. Send unit and time, one truck a line: "truck for 12 comes at 19:00".
ask-was-pumped = Was { $unit } pumped out after { $since }? Send "yes" with the hour, or "no".
pumped-taken = Taken as pumped out about { $time }, half way between the two readings.
pumped-in-part-left = Not taken as emptied. The pump-out of { $unit } stays to be done.
hose-off-dry = { $unit }: waste hose off, and nothing out: no spill is logged. Valve shut first. Gloves on. Put the hose back on, its clamp or lugs tight. Then look under it. Wet: text "{ $unit } waste spill".
back-after-frost-task = Task { $id } stays: "done { $id }" once all runs and nothing drips.
back-after-frost = { $unit }: power is back after { $age } in the frost. Pipes may be frozen or split. Pump and water heater stay off. Open one tap at a time, and look under it for drips. No water: thaw or drain it. Task { $id } stays: "done { $id }" once all runs and nothing drips.
pumped-in-part = Not taken as emptied. How much is left in { $unit }? Send it as in "{ $unit } waste 1/2", or "{ $unit } waste empty".
pumped-too-few = Not taken as emptied: { $unit } held about { $was } at { $time }, and { $value } came out. How much is left? Send it as in "{ $unit } waste 1/2", or "{ $unit } waste empty".
pumped-not = Then it went somewhere else, or the gauge lies. Look under { $unit } for an open valve or a leak. Look down a toilet with a light. Send what you see.
truck-gone = Did the truck pump { $unit } out? Send the gallons, as in "{ $unit } pumped 380 gal". Nothing is logged yet.
truck-call-yourself = I call nobody. When somebody has, send "truck for { $unit } comes at 19:00".
truck-late-when = When does the truck for { $unit } come? Send the time, as in 19:30.
truck-off-told = { $who } says the truck for { $unit } is not coming. Call another one.
truck-unneeded-told = { $who } says { $unit } needs no truck. Its truck is no longer noted: phone the hauler.
truck-late-told = { $who } says the truck for { $unit } comes at { $time }. That may be too late for the tank.
tail-called-for = It was called, promised for { $time }: task { $id }.
tail-here = The truck is there since { $time }: task { $id }.
tail-nobody-called = Nobody called yet: task { $id }.
tail-taken = { $who } has task { $id }.
tail-task = Task { $id }.
tasks-head = { $count ->
    [one] One open task:
   *[other] { $count } open tasks, soonest first:
}
tasks-none = No open tasks.
tasks-none-mine = You have no open tasks. "tasks" lists all of them.
tasks-none-on = No open tasks on { $unit }.
tasks-who = I know nobody called { $quote }. "tasks" lists all, "tasks for" and a name theirs.
tasks-none-of = { $who } has no open tasks.
task-unknown = There is no task { $id }. Nothing changed. Send "tasks" for the list.
task-or-trailer = Trailer { $unit } is shut? Send "{ $unit } closed". Somebody is to shut it? Send "tell NAME close { $unit }".
tasks-on-unit = Open on { $unit }: { $tasks }. Use the task number, the first one.
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
forecast-waste-unread = Nobody has read the waste tank. By the crowd it may be at { $limit } or over by now. Read it.
forecast-fresh-unread = Nobody has told the fresh level. By the crowd it may be at { $limit } or under by now. Read it.
forecast-unread = That goes by the crowd alone: nobody has read it.
forecast-misread = The last gauge reading fits nothing else. Please read it again.

### Status and history

status = { $unit }: { $stage }.
status-site = { $unit } at { $site }: { $stage }.
status-last-word = Last word { $age } ago, { $who }.
status-no-word = No word from it yet.
status-read = { $time }: { $what }
status-faults = Wrong now: { $faults }.
status-fault = { $fault } since { $time }
status-hazard-ends = Made safe? Text "{ $unit } safe now".
status-row = { $signal } { $name }. { $what }
status-row-signal = { $signal } { $unit }: { $name }. { $what }
more-left = "more" goes on with { $unit }.
status-more = "more" tells all of { $unit }, "why" the reasons.
history = { $unit }, last reports:
history-line = { $time } { $who }: { $what }
history-none = No reports on { $unit } yet.
stage-unknown = state not told
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
unreadable = I cannot read a { $kind ->
    [voice] voice message
    [sticker] sticker
    [video] video
    [photo] photo without words
   *[other] message of that kind
}. Nothing logged. Please write what you see.
heard-of = Noted, a word on { $units }. Nothing new to log.
unplaced = Not logged, I could not place it: { $quote }. Say the thing, like "{ $unit } leak" or "{ $unit } no lights". Anyone in danger: call the emergency number first, then send "need help".
nothing-to-log = Read. Nothing to log.
nearest-none = I found no report and no order in { $quote }.
nearest-help = "help" lists the orders.
answer-digest-past = I keep no digest of a day that is over: "history 12" tells a trailer's past. This is how it stands now.
nearest-hours = Jobs, their hours and their trailers stand in the fleet's file jobs.toml, and no message changes them. Forecasts go by that file. To tell the crew: "tell Sam" and your words.
nearest-shift = I keep no shifts: who works stands in the fleet's files. A task goes over with "assign 4 to Sam". The rest: "tell Sam" and your words.
nearest-stop = "got it" stops an alarm, "quiet 22:00-06:00" holds back what can wait.
nearest-cancel = "undo" takes your last one back, "drop 41" and a reason a task. A truck: "truck for 12 is off".
nearest-assign = To give a task: "assign 4 to Sam". "tasks" lists the numbers.
nearest-truck = A truck that comes: "truck for 12 comes at 19:00". One that is wanted: "need a truck for 12 by 19:00".
nearest-tell = To pass words on: "tell Sam" and your words.
nearest-people = To let somebody in: "invite driver Sam". To shut somebody out: "shut out Sam".
nearest-export = That is done on the bot's own machine: hosebib export. "digest", "tasks" and "history 12" list here.
nearest-set = A task's time: "move 41 19:30". Tonight's low: "low tonight 12F".
nearest-show = "digest", "tasks", "jobs", "crew", "status 12" and "history 12" list what I know.
stranger = This chat is for invited people only.

### Incidents: opened, told and released by a dispatcher

incident-opened = Incident { $id } on { $unit } is open. What was said of { $unit } from { $from } to { $to } is kept until it is released.
incident-help-first = Is somebody hurt now? Yes: call the emergency number first. Later "incident { $unit }" goes on.
incident-opened-by = { $who } opened incident { $id } on { $unit }. What was said of { $unit } from { $from } to { $to } is kept.
incident-goes-on = Incident { $id } on { $unit } goes on.
incident-ask = Incident { $id }, { $row } of { $rows }: { $what }
incident-ask-what = what happened? "skip" if not known, "stop" to go on later.
incident-ask-when = when was it? A time, or: yesterday 18:40.
incident-ask-where = where on the site? The door, the step, the stall.
incident-ask-who = who was involved? Names, crew or guest.
incident-ask-injured = was anybody hurt, and how? Who gave help?
incident-ask-told = who was told, and when? Office, client, insurer, police.
incident-ask-witnesses = who saw it? Names and how to reach them.
incident-ask-photos = are there photos? Who has them?
incident-noted = Noted: { $quote }.
incident-kept = Kept now: what was said from { $from } to { $to }.
incident-added = Added to incident { $id }. For another one: "new incident { $unit }".
incident-not-known = Noted as not known.
incident-later = The other facts can wait. Later "incident { $unit }" goes on.
incident-stopped = Stopped. { $count ->
    [one] 1 fact
   *[other] { $count } facts
  } of incident { $id } not told yet. "incident { $unit }" goes on.
incident-complete = Incident { $id } on { $unit }: { $count ->
    [0] all facts are asked
    [one] 1 fact is open
   *[other] { $count } facts are open
  }. Its texts are kept. "release incident { $id }" with a reason lets them go.
incident-line = Incident { $id } on { $unit }, opened { $time }: { $count ->
    [0] all facts asked
    [one] 1 fact not told
   *[other] { $count } facts not told
  }.
incident-none = No incident is open. No text is held.
incident-how = Open one as: incident 14 what happened, with the time. "incidents" lists them. "release incident 3" with a reason ends one.
incident-export = That is done on the bot's own machine: hosebib export incident { $id } --csv --data DIR. "incidents" lists them here.
incident-export-which = Say it with its number: export incident 3. "incidents" lists them.
incident-release-how = Say it with its number and the reason: release incident 3 insurer has settled. "incidents" lists them.
incident-release-why = Incident { $id } is still held. Why is it released? Send the reason in a few words.
incident-release-sure = Incident { $id } is still held. Release it for good, for { $quote }? Yes or no.
incident-no-such = There is no open incident { $id }. "incidents" lists them.
incident-released = Incident { $id } on { $unit } is released. Its texts now go as all others do. Export it first if you need it.
incident-released-by = { $who } released incident { $id } on { $unit }: { $quote }.

### Printed on a trailer's sticker

sticker = Crew: scan this to report on the trailer.

### The service itself

service-not-logged-yet = NOT LOGGED yet: the bot's disk has a fault. It will be logged when the disk is mended. No need to send it again.
service-not-logged = NOT LOGGED: the disk has a fault. Mend it, then send your message again.
service-danger-not-logged = { $words }
    (Not logged: the bot's disk has a fault.)
service-answered-below = You edited that message. The answer is below.
service-set-aside = I could not work through this message. Its words are kept, nothing of it was logged. Say it in other words, or phone the dispatcher.
service-unreachable = { $who } cannot be reached on the chat. Phone them.
service-undelivered = This did not reach { $who } on the chat. Phone them:
    { $words }

### Orders and their answers

undone = Taken back, from { $time }: { $what }. It counts no more. To bring it back, send it again.
undone-note = Note on { $unit } taken back: { $quote }
undone-cleared = The notes on { $unit } stand again.
undone-override = Taken back on { $unit }: { $quote }. The advice holds again.
undone-weather = Taken back: a low of { $value } tonight.
undone-air = Taken back: air of { $value }.
undone-weather-told = Told to { $names }.
weather-taken-back = { $who } takes back the low of { $value } told before.
air-taken-back = { $who } takes back the air of { $value } told before.
weather-holds = The low of { $value } holds.
weather-holds-air = The air of { $value } counts for tonight.
weather-holds-none = No low is told for tonight now.
undone-step = Taken back on { $unit }: { $what }. It counts as not done.
order-taken-back = { $unit }: { $who } takes back the order told before: { $quote }.
undone-correction = Your correction is taken back. What you sent before stands again.
undone-task = Taken back, what you told me to do at { $time }: { $what }.
ask-no-danger = Was { $unit }, { $what }, really a mistake? Yes or no. Not sure: no, and it stands again. Keep people off until then.
ask-no-danger-person = Was it really a mistake: { $what }? Yes or no. Not sure: no, and it stands again. Keep people off until then.
danger-back-taken = Taken back: { $what }. The dispatcher is told.
danger-back-person = { $who } takes back: { $what }, with no unit named. Phone them and make sure.
no-danger-person = Taken as a mistake. The slightest doubt: keep people off and send it again.
no-danger = { $unit }: taken as a mistake. The slightest doubt: keep people off and send it again.
danger-back = { $unit }: { $who } takes back: { $what }. Phone them and make sure before anybody uses it.
danger-back-moved = { $unit }: { $who } takes back: { $what }. It is { $to } that is meant.
danger-back-not-yours = Only who reported the danger on { $unit } can take it back. It stands. Keep off, and phone them.
undo-old = Your last one is from { $time }: { $what }. Take it back? Yes or no.
undo-not-yours = Each takes back their own. Phone { $who }: "undo" from them does it.
undo-older = You took your last one back already. Before it, at { $time }: { $what }. Take that back too? Yes or no.
undo-what-note = a note on { $unit }
undo-what-cleared = notes of { $unit } cleared
undo-what-override = an override on { $unit }
undo-what-step = a step of leaving with { $unit }
undo-what-watch = a watch on { $unit }
undo-what-low = a low of { $value }
undo-what-air = air of { $value }
changed-value = Changed on { $unit }: { $was }, now { $what }.
changed-unit = Changed: that was for { $unit }, not { $from }. None of it stays on { $from }.
changed-off = Taken back on { $unit }: { $what }.
undo-nothing = Nothing to take back. I keep your own reports for 24 h.
undo-for-good = "undo" cannot take your last order back. Nothing changed. Give the opposite order, or tell whoever it was about.
edit-taken = Your edit takes the place of what you sent at { $time }.
edit-undone = Your edit takes back what you sent at { $time }. Nothing new logged.
late-message = Your message of { $time } came in just now. It is logged for that time.
late-message-own = Your message of { $time } came in just now. It is logged for the times you gave.
late-meanwhile = Newer reports came in since. This advice goes by the newest.
late-since = Since then on { $unit }, { $time }, { $who }: { $what }.
watch-set = I will tell you when { $unit } reaches { $what }.
watch-set-below = I will tell you when { $unit } is down to { $what }.
watch-past = { $unit } is there already: { $what } at { $time }. No watch set.
watch-how = No alarm is set: I did not get what to watch. Send unit and value, as in "if 12 hits 3/4 call me".
watch-left = Not watched: { $quote }. Send that on its own.
watch-none = You have no watch set. Send for instance: if 12 hits 3/4 call me.
watch-hit = You asked to know: { $unit } { $what }, reported by { $who }.
got-it = Noted: { $what }. It will not come up again unless it gets worse.
got-it-noted = Noted: { $what }.
got-it-danger-stands = Good. The danger on { $unit } stands: do what was said. Only the dispatcher takes note of it.
got-it-advice = Good. It stands until it is done. Only a dispatcher's "got it" stops their alarm.
got-it-nothing = Nothing is waiting for a "got it".
got-it-by = { $who } has noted: { $what }.
got-it-task = task { $task }
got-it-alone = { $who } works alone and does not answer
got-it-alone-ask = Was { $who } reached? Then send "{ $who } is ok": it ends the clock. Else send somebody, call emergency. I ask again in 10 min.
never-mind-question = Question dropped. Nothing logged for it.
never-mind-left = Left as it is. Nothing changed.
never-mind-watch = Your watch on { $unit } is off.
never-mind-nothing = No question is open.
order-not-yet = I cannot do that yet. Nothing changed.
order-left = Not done: { $quote }. Send it by itself.
order-which-task = Which task? Send the word with the task number. "tasks" lists them.
drop-needs-reason = Why drop it? Send "drop { $id }" with the reason.
move-is-past = That time is past today. Nothing changed. Send it with the day, as in "move { $id } tomorrow 8am".
move-past-limit = By the forecast the tank may be at its limit from { $time }. A truck at { $due } is late for that.
move-needs-time = To when? Send "move { $id } 19:30" with your own time.
log-of = { $who }, newest first:
log-line = { $time } { $unit }: { $what }
log-none = { $who } has no reports in the last two days.
log-who = I know nobody called { $quote }. Send a name from the crew list.
assign-how = Send "assign", the task number and a name: assign 4 to Sam.
assign-who = I know nobody called { $quote }. The task stays as it was.
errand-how = Say what is to be done. A task: "task for 12: bring spare hose by 18:00". For somebody: "remind tobin at 16:00 to bring salt".
assign-told = { $who } gives you this task: { $task } Send "done { $id }" when it is done. If you cannot do it, tell { $who }.
assign-taken-back = { $who } took that back. This is no longer your task: { $task }
need-told = { $unit }: { $who } asks for something: { $quote }.
refuse-not-yours = You do not have task { $id }. Nothing changed.
refuse-done = I told { $who } that you cannot do it.
refuse-told = { $who } cannot do task { $task }: { $quote }. Nobody has it now.
drop-told = { $who } dropped task { $task }: { $quote }.
tell-answered = { $who } answers { $quote }: { $words }
tell-sent = Passed on to { $who }.
tell-already = Reported for { $unit } already: { $what }, { $time }.
tell-from = From { $who }: { $quote }
tell-asks = { $who } asks: { $quote }
tell-who = I know nobody called { $quote }. Nothing passed on. Send "tell", the name and your words.
tell-site-nobody = I know nobody at that site now. Nothing passed on. Send "tell", a name and your words.
tell-only-you = You are the only dispatcher. Nothing passed on.
tell-at-once = It went out at once. With a time I keep it until then: "remind tobin at 18:00 to bring salt".
person-is-out = { $who } is shut out or has left. Nothing changed. "invite driver { $who }" lets them in again.
tell-who-near = Did you mean { $names }?
tell-all-what = Send "tell everyone" and your words.
tell-all-nobody = Nobody else is on the crew today. Nothing passed on.
tell-all-off = Not on today's crew, so not told: { $who }. Tell them by name.
tell-except = Not passed on: I leave nobody out. Name those it is for, as in "tell juno and lupe" and your words.
tell-all-instead = Tell them one by one: "tell NAME" and your words.
override-told = { $unit }: { $who } lets it go as it is: { $quote }. The cautions still hold. Walking pace, level ground, no public road. Text "{ $unit } left" when you go.
override-logged = Override on { $unit } logged in your name. Reason: { $quote }.
relearn-done = I forgot what { $count ->
        [one] one pump-out
       *[other] { $count } pump-outs
    } taught me about { $unit }. The fleet's own values hold until I learn anew.
relearn-nothing = I have learned nothing about { $unit } yet. The fleet's own values hold.
relearn-how = Send "relearn" and the unit: relearn 12. It forgets what pump-outs taught me.
override-needs-reason = Send "override", the unit and the reason.
taught = From now on I read { $word } as { $meaning }, for everyone. Send "forget word" and the word to take it back.
teach-how = To add a word, send "teach", the word, "=" and one I know: teach big belly = waste.
teach-taught-already = I read { $word } as { $meaning } already. Nothing to learn.
teach-taught-else = Not learned. { $word } means { $meaning } already. Send "forget word" and the word first.
teach-no-word = Not learned. A new word is made of letters: at most { $count } words and { $value } letters.
teach-unknown = Not learned. I do not know { $meaning }. Try one of these: { $names }.
teach-no-use = Not learned. { $meaning } can have no other word. Use a thing, a state or a fault, such as "waste".
teach-number = Not learned. { $word } is a number. Teach a word without numbers.
teach-ordinary = Not learned. { $word } is an everyday word. Other messages would be misread. Use a word that only you say.
teach-known = Not learned. I read { $word } as something else already. Use another word.
teach-slip = Not learned. { $word } looks like a typing slip for { $meaning }. Use a word less like it.
teach-name = Not learned. { $word } is the name of a { $kind ->
    [trailer] trailer
    [site] site
   *[person] person
}. Use another word.
words-none = No words of your own yet.
words-head = { $count ->
    [one] 1 word of your own:
   *[other] { $count } words of your own:
}
words-line = { $word } = { $meaning }
forget-word-how = Send "forget word" and the word: forget word big belly. "words" lists them.
word-forgotten = { $word } no longer means { $meaning }.
word-not-taught = Nobody taught me { $quote }. "words" lists those I learned.
word-of-files = { $quote } stands in the fleet's words.toml. It must be taken out there.
note-taken = Note on { $unit } kept: { $quote }. It comes up at each arrival until cleared.
sum-result = { $name }: { $value }. Source: { $source }
sum-how = For instance: sum drop 16 amps 150 ft 14 gauge.
sum-unknown = I do not know that sum. I know these: { $names }.
sum-never = never
sum-assumed = Taken, as you gave none: { $what }.
sum-unused = Not used for this sum: { $what }.
sum-missing = For that sum I also need: { $what }.
sum-out-of-range = Those numbers cannot be right. Nothing computed.
sum-list = That sum takes a list, which a message cannot give. "hosebib sum" takes it.
sum-yes = yes
sum-no = no
sum-cord-end = left at the trailer
sum-longest-cord = longest cord for a loss of 3 %
sum-ampacity = cord rating
sum-continuous = most for hours on that breaker
sum-converter = converter draws
sum-residual = pressure at the trailer
sum-climb = pressure lost to the climb
sum-demand = flow wanted at the peak
sum-charge = battery charge at rest
sum-reheat = water hot in
sum-glycol = pink antifreeze mix freezes at
sum-salt = salt for that brine
sum-brine = brine freezes at
sum-fresh = fresh water lasts
sum-busy = busy share of the stalls
sum-burst = line gone in
sum-seats = toilets for that many workers
sum-urinals = urinals beside them
sum-uses = uses an hour
sum-paper = paper rolls
sum-tongue = tongue weight, least and most
sum-overweight = over the weight rating by
sum-tire = tire pressure then
sum-downhill = force that makes it roll
sum-block = block height
sum-ramp = ramp length
sum-pad = jack pad, square inches
sum-leak = leak
sum-body = current through a body
sum-need-sinks = sinks
sum-need-people = people
sum-need-volts = volts
sum-need-rise = climb in feet
sum-need-watts = watts
sum-need-pounds = weight in lb
sum-need-seconds = seconds
sum-need-hours = hours
sum-drop = voltage drop
sum-drop-pct = of the supply volts
sum-drop-fine = Fine: up to { $limit } is good.
sum-drop-long-use = Too long for hours of load: over { $limit }. A { $count } gauge cord loses { $value }.
sum-drop-long-shorter = Too long for hours of load: over { $limit }. Use a shorter cord or less load.
sum-drop-too-much-use = Too much: over { $limit }. Use { $count } gauge: it loses { $value }. Or a shorter cord.
sum-drop-too-much-shorter = Too much: over { $limit }. Use a shorter cord or less load.
sum-drop-over-rating = And { $read } is over that cord's rating of { $limit }. Do not run it so.
sum-freeze = standing hose at freezing in
sum-blocked = standing hose may be blocked by ice in
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
unreachable = { $who } cannot be reached on the chat. Phone them.

### Letting people in

role-driver = driver
role-tech = tech
role-dispatcher = dispatcher
invite-made = Invite made for { $who } ({ $role }). Pass the next message on to them. It lets in one person, once, until { $time }.
invite-link = { $who }, this lets you into the crew chat of { $company }. Open it on your phone and press Start: { $link }
invite-code = { $who }, this lets you into the crew chat of { $company }. Send the bot this line: /start { $code }
invite-how = Say it as: invite tech Sam es. The role is driver, tech or dispatcher; the language is en or es.
invite-not-here = No invite can be made here. Nothing changed.
invite-not-yours = This invite is for { $who }, and it was not used up. Pass it on to them.
invite-spent = This invite is no longer good. You are in the crew already and need none.
invite-withdrawn = The invite for { $who } is no longer good.
joined =
    Hello { $who }. You are in the crew of { $company }. Your role: { $role }.
    Send the unit and what you see: 12 pressure 50 tank 1/2.
    "help" shows what you can send. "language es" is for Spanish.
joined-told = { $who } has joined ({ $role }).
role-set = The role of { $who } is { $role } now.
role-same = The role of { $who } is { $role } already. Nothing changed.
role-yours = Your role is { $role } now. "help" shows what you may do.
role-how = Say it as: role Sam tech. A role is driver, tech or dispatcher.
shut-out = { $who } is shut out from now on. Their messages and buttons no longer count, and nothing more is sent to them. To let them back in, invite them again.
shut-out-told = { $by } has shut out { $who }. Nothing more is sent to them.
shut-out-already = { $who } is shut out already. Nothing changed.
shut-out-how = Whom? Say it as: shut out Sam. It works at once.
last-dispatcher = Nothing changed. You are the last dispatcher who can write to me, and somebody must be. Invite another one first: invite dispatcher Sam en.
people-unknown = Nobody on the crew is called { $quote }. Nothing changed. "crew" lists everybody.
people-which = Several people have that name. Nothing changed. Say which: { $ids }.
people-list = { $count ->
    [one] 1 person is in the crew:
   *[other] { $count } people are in the crew:
}
people-row-heard = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: last wrote { $age } ago
people-row = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: has not written yet
people-row-no-phone = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: has not joined yet
people-row-unreachable = { $row }. Cannot be written to since { $since }. Did they block the bot?
people-row-invited = { $who }, { $role }: invited, until { $time }
people-row-out = { $who }: shut out or left
left-crew = You have left the crew. You get nothing more from me. A dispatcher can invite you again.
left-crew-told = { $who } has left the crew by their own word. Nothing more is sent to them.
language-set = I answer you in English from now on.
language-how = I write English and Spanish. Send "language en" or "language es".
quiet-set = Noted: what can wait is not sent to you from { $from } to { $to }. Dangers always come. "quiet off" ends it.
quiet-how = I read no two times there. Send for example "quiet 22:00-06:00". "quiet off" ends it.
quiet-off = Your own quiet hours are off.
refused = Refused since { $time }: { $rows }. Nothing of it was acted on.
refused-row = { $what ->
    [message] { $count ->
        [one] 1 message
       *[other] { $count } messages
    } from { $senders ->
        [one] 1 unknown sender
       *[other] { $senders } unknown senders
    }
    [forged-invite] { $count ->
        [one] 1 invite nobody gave out
       *[other] { $count } invites nobody gave out
    }
    [used-invite] { $count ->
        [one] 1 used invite
       *[other] { $count } used invites
    }
    [expired-invite] { $count ->
        [one] 1 expired invite
       *[other] { $count } expired invites
    }
    [withdrawn-invite] { $count ->
        [one] 1 withdrawn invite
       *[other] { $count } withdrawn invites
    }
    [press] { $count ->
        [one] 1 button press
       *[other] { $count } button presses
    }
   *[order] { $count ->
        [one] 1 order
       *[other] { $count } orders
    }
}
refused-row-crew = { $row } not allowed to { $who }

### Buttons: what stands on them, and what a press says

choice-done = Done { $id }
choice-done-says = done { $id }
choice-take = Take { $id }
choice-take-says = take { $id }
choice-why = Why?
choice-why-says = why
choice-got-it = Got it
choice-got-it-says = got it
choice-ok = OK
choice-ok-says = ok
choice-help = Help
choice-help-says = help
choice-not-right = Not right
choice-not-right-says = undo
choice-yes = Yes
choice-yes-says = yes
choice-no = No
choice-no-says = no
choice-all = All
choice-all-says = all
choice-skip = Skip
choice-skip-says = skip
choice-ready = Done
choice-ready-says = yes
choice-shut = Shut
choice-shut-says = taps shut
choice-running = Running
choice-running-says = taps running
choice-before = Before
choice-before-says = before
choice-after = After
choice-after-says = after
choice-first-says = the first
choice-second-says = the second
choice-third-says = the third

### Shown for a moment to whoever pressed a button that does nothing

press-over = That question is over. Write it, if it still holds.
press-spent = Pressed before. It counts once.
press-expired = This button is too old. Write it instead.
press-not-yours = This button is for somebody else. Write it instead.
press-unknown = This button does nothing. Write it instead.

### The menu of commands: a word of a-z and _, and what it is for

menu-status = status
menu-status-about = How a trailer stands
menu-tasks = tasks
menu-tasks-about = What is to be done
menu-why = why
menu-why-about = The sum and source behind the last advice
menu-undo = undo
menu-undo-about = Take back my last report
menu-got-it = got_it
menu-got-it-about = Stop an alarm for all
menu-forecast = forecast
menu-forecast-about = When a tank is full or a battery low
menu-digest = digest
menu-digest-about = Every trailer at once (dispatcher)
menu-help = help
menu-help-about = What I can send

### A place that was shared

place-there = You are at { $site }.
place-not-by-plan = The plan has { $unit } at { $from }, not at { $site }. Help is sent to { $site } unless you say no.
answer-none-at = Nothing stands at { $site } now, by the plan and by what was told.
answer-none-open = By what was reported, no trailer is open.
answer-none-closed = By what was reported, no trailer is closed.
answer-plan-elsewhere = I cannot change the plan here. The company's files keep it. To tell the crew: "tell NAME" and your words.
place-not-by-plan-told = { $who } says { $unit } is at { $site }. The plan has it at { $from }.
left-early-told = { $who } left { $site } with { $unit }. The job there runs until { $time }.
place-none-due = None of today's trailers is still due there.
place-far = { $site } is about { $value } away as the crow flies, roughly { $age } with a trailer.
place-nowhere = I know no place of a job that is on now. Say it in words: "12 arrived".
place-late = That place is from a while ago, so I did not use it. Say it in words: "12 arrived".
ask-arrived = { $unit } arrived? Yes or no.
ask-arrived-which = Which arrived: { $units }? Send the unit, or "all".

### Pictures

photo-noted = Photo noted with { $unit }.
photo-noted-nowhere = Photo noted.
photo-of = The photos go with { $unit }.
ask-photo-of = Which unit does it show?
ask-photo-of-which = Which unit does it show: { $units }?
photo-lost-too-large = A photo you sent is not kept: larger than 10 MB. Send it smaller, as a photo and not as a file.
photo-lost-no-picture = A photo you sent is not kept: it is not a JPEG, PNG, WebP or HEIC picture. Send it as a photo.
photo-lost-gone = A photo you sent is not kept: the network does not give it out any more. Send it again.

### Alarms to a dispatcher

alarm-danger = { $signal } { $unit }: { $who } reports { $what } at { $site }. Phone them now.
alarm-danger-no-site = { $signal } { $unit }: { $who } reports { $what }. Phone them now.
alarm-danger-another = { $signal } { $unit }: { $who } reports { $what } again, perhaps another person. Phone them now.
alarm-person = { $signal }: { $who } reports { $what }. Phone them now.
alarm-where = Where they are is not known: ask them.
alarm-told-by = { $who } reports:
alarm-no-power-frost = { $unit }: no power at { $value }, says { $who }, and water is aboard. The heaters are off with it: it freezes. Power back soon, or drain it. Is somebody on it?
alarm-no-power-frost-site = { $unit } at { $site }: no power at { $value }, says { $who }, and water is aboard. The heaters are off with it: it freezes. Power back soon, or drain it. Is somebody on it?
alarm-read-by = { $who } wrote just now:
alarm-no-heat = { $unit }: no heat at { $value }, says { $who }, and water is aboard. Heat it soon, or drain it. Is somebody on it?
alarm-no-heat-site = { $unit } at { $site }: no heat at { $value }, says { $who }, and water is aboard. Heat it soon, or drain it. Is somebody on it?
alarm-guessed = The unit was not named: make sure which.
alarm-site = It is said to be at { $site }.
alarm-site-differs = They also named { $site }: make sure where.
alarm-answer = Answer "got it" to stop this alarm for all.
alarm-driving = { $who } is on the road. Phone them, do not text.

### Loads, as fleets name them

part-ac = AC
part-heat = heat
part-water-heater = water heater
part-converter = converter
part-bay-heater = bay heater
part-tank-heater = tank heater
part-of-room = { $what } room { $name }
fact-feed-count = how many circuits

### Help

help-driver =
    Somebody hurt or in danger: call the emergency number first, then send "need help".
    Send the unit and what you see, in your own words:
      12 pressure 50 tank 1/2 temp 20
      14 arrived, chocked. 9 no hot water
      12 pumped 380 gal
    Ask: "status 12", "forecast 12", "history 12", "tasks", "why".
    "done 41" closes task 41, "take 41" makes it yours.
    "oops 52" or "*3/4" mends your last report. "undo" takes back a report, note, watch or order.
    "if 12 hits 3/4 call me" sets a watch, "watches" lists yours.
    In a check: "back", "repeat", "skip", "stop check". Later "where were we" goes on, "take over 12" takes another's.
    "note 12 tap the gauge" is told at each arrival of 12.
    "language es" changes your language, "quiet 22:00-06:00" sets your quiet hours. "log" lists your reports.
    "leave the crew" ends it for good.
    I advise. Local code and licensed trades decide.
help-tech =
    { help-driver }
    As a tech: "drop 41" with a reason, "move 41 19:30". "task for 12: bring hose by 18:00" opens a task. "remind Sam at 16:00 to bring salt" gives Sam one.
help-dispatcher =
    { help-tech }
    As a dispatcher: "digest", "log" with a name, "override 12" with a reason. "assign 41 to Sam" gives Sam a task. "relearn 12" forgets what pump-outs taught. "teach" adds a word of your own, "words" lists them. "got it" stops an alarm for all.
    "invite tech Sam es" lets Sam in. "role Sam driver" changes what Sam may do. "crew" lists everybody.
    A lost phone: "shut out Sam". It works at once.
    "incident 14" with what happened keeps what was said of 14, and asks the facts.

### The demo

demo-greeting =
    This is a demo with an invented company. It is { $time } there, and you are { $name }.
    Try: unit 12 pressure 95 tank 3/4 temp -5
    "help" shows more, and ctrl-D ends it.
demo-data = Its records are kept in { $folder }.
console-greeting = You are { $name }. It is { $time }. "help" shows what to send, and ctrl-D ends it.

### Short names of findings, for lists

name-water-over-pressure = water pressure too high
name-water-under-pressure = water pressure low
name-water-pressure-falling = water pressure falling
name-water-hose-undersized = hose too small
name-water-fresh-endurance = fresh water running out
name-water-backflow = backflow risk
name-waste-book-pump-out = pump-out to book
truck-named-promised = pump truck promised for { $time }
truck-named-here = pump truck is there
air-taken = (Air taken as read at { $from }.)
truck-named-called = pump truck called, no time told
name-waste-close-now = waste tank full
name-waste-spill = sewage spill
name-waste-dropped-unexplained = waste level fell unexplained
name-waste-gauge-doubtful = gauge doubtful
name-cold-freeze-soon = freezing
name-cold-tank-heater-on = tank heater
name-cold-no-cold-package = no cold package
name-cold-winterize = winterize
name-cold-crew-cold = cold for the crew
name-cold-crew-cold-warning = someone suffering from cold
name-heat-crew-heat = heat for the crew
name-power-shock = electric shock
name-power-low-voltage = voltage low
name-power-high-voltage = voltage high
name-power-high-voltage-danger = open neutral suspected
name-power-over-current = too many amps
name-power-cord-drop = voltage lost in the cord
name-power-cord-overloaded = cord overloaded
name-power-too-few-circuits = too few circuits
name-power-shared-circuit = circuit shared
name-power-on-battery = running on battery
name-power-battery-low = battery low
name-power-generator = generator too small
name-power-generator-danger = generator or fuel burner inside
name-crowd-under-served = too few stalls
name-site-not-level = not level
name-site-not-chocked = not chocked
name-site-set-up-next = set-up goes on
name-site-wind = wind
name-site-unsafe = something unsafe
name-site-unsafe-no-chocks = no chocks under it
name-site-unsafe-dumped = waste let out on the ground or in a drain
name-site-unsafe-battery-gassing = a battery that gasses or swells
name-site-unsafe-battery-frozen = a frozen battery
name-site-unsafe-backfeed = power fed in backwards, with a live plug
name-site-unsafe-refuel-running = fuel poured into a running generator
name-site-unsafe-bypassed = a GFCI or ground bypassed
name-site-unsafe-power-strip = a trailer or heater on a power strip
name-site-unsafe-breaker-held = a breaker held on
name-site-unsafe-generator-near = a generator too close
name-site-unsafe-fuel-heater = a fuel heater inside
name-site-unsafe-cord-in-water = a cord or plug in water
name-site-unsafe-people-inside = people still inside
name-site-unsafe-water-on-fire = water on a fire
name-site-unsafe-rolled = a trailer that has rolled
name-site-unsafe-bites = metal that shocks people
name-site-unsafe-road-loose = a trailer lost on the road
name-site-unsafe-came-off = a trailer that came off the hitch
name-site-unsafe-exhaust-in = engine exhaust that gets in
name-site-unsafe-generator-at-door = a generator at the door
name-site-unsafe-generator-behind = a generator close by
name-site-unsafe-engine-at-door = an engine running at the door
name-site-unsafe-burnt-smell = burnt smell
name-site-unsafe-burnt-smell-plug = burnt smell at a plug
name-site-unsafe-co-alarm = CO alarm or exhaust fumes
name-site-unsafe-frostbite = skin or a body hurt by the cold
name-site-unsafe-trapped = somebody shut in who does not answer
name-site-unsafe-needle = a needle found
name-site-unsafe-needle-how = a needle found
name-site-unsafe-needle-stick = somebody stuck by a needle
name-site-unsafe-burnt-by-plug = somebody burnt by a hot plug
name-site-unsafe-plug-hot = a hot or burnt plug
name-site-unsafe-spill-drain = sewage that got into a drain or water
name-site-unsafe-smoking = somebody smoking by a vent or gas
name-site-unsafe-tank-entry = somebody going into a tank
name-site-unsafe-under-jack = somebody under a trailer on a jack
name-site-unsafe-fuse-wrong = a wrong fuse or foil in its place
name-site-unsafe-thaw-heat = flame or a heat gun on frozen pipes
name-site-unsafe-relief-valve = a relief valve that blows
name-site-unsafe-space-heater = a space heater on an extension cord
name-site-unsafe-power-line = a power line that is touched or down
name-site-unsafe-power-line-hurt = somebody hurt by a power line
name-site-unsafe-swaying = a trailer that sways on the road
name-site-unsafe-open-neutral = a neutral that may be open
name-site-unsafe-wreck = a crash, or a rig in the ditch
name-site-unsafe-sliding = a trailer that slides
name-site-unsafe-wind-tips = wind that may turn a trailer over
name-site-unsafe-shared-outlet = two cords on one outlet
name-site-unsafe-towed-attached = a trailer towed with something still out or hooked up
name-site-unsafe-blowout = a tire that blew on the road
name-site-unsafe-drowsy = a driver who falls asleep
name-site-unsafe-drank = a driver who drank
name-site-unsafe-truck-brakes = a truck whose brakes are bad
name-site-unsafe-stolen = something stolen
name-site-unsafe-heat-stroke = somebody with heat stroke
name-site-unsafe-heat-stroke-at = somebody with heat stroke
site-unsafe-drank = Do not drive or tow, not even across the lot. Give the keys to somebody sober. Already on the road: pull over where it is safe, and chock it. Nobody is angry about a late trailer: tell the dispatcher now, so that somebody else drives.
site-unsafe-truck-brakes = Do not drive or tow with it. On the road: foot off the gas, low gear, flashers on. Pull over where it is safe. Then chock truck and trailer, and call the dispatcher. A shop looks at the brakes before it rolls again.
site-unsafe-stolen = Do not go after them, and touch nothing they touched. Somebody still there: get away, call the emergency number. Else report it to the police: what, when, plate or number. A cord cut or a pipe open: power and water off at the source.
site-unsafe-heat-stroke = Call the emergency number now. Into the shade or AC, clothes off or loose. Cool at once: cold water all over and a fan, or ice at neck, armpits and groin. Go on until help is there. Confused or not awake: nothing to drink.
site-unsafe-heat-stroke-at = Call the emergency number now: say { $address }. Into the shade or AC, clothes off or loose. Cool at once: cold water all over and a fan, or ice at neck, armpits and groin. Go on until help is there. Confused or not awake: nothing to drink.
name-site-unsafe-hose-whips = a hose under pressure that came loose
name-site-unsafe-waste-cap-off = a waste cap that let go
name-site-unsafe-bowl-over = a bowl or urinal that runs over
name-site-unsafe-drain-cleaner-in = drain cleaner in a clog
name-site-unsafe-cord-taped = a damaged cord that is taped and used
name-site-unsafe-fuel-heater-meant = a fuel heater meant for inside
name-site-unsafe-on-the-roof = somebody on the roof
name-site-unsafe-battery-jumped = a battery that is jumped
name-site-unsafe-held = somebody held by the current
name-site-unsafe-mixed-cleaners = cleaners mixed that make a gas
name-site-unsafe-tank-gas-strong = a strong smell of tank gas
name-site-unsafe-tank-gas = a smell of tank gas
name-site-unsafe-hitch-pin = a hitch pin or ball missing or wrong
name-site-unsafe-tire-low = a tire that looks low
name-site-unsafe-gas-collapse = someone down by a tank that gives off gas
name-site-unsafe-chain-broken = a safety chain broken or missing
name-site-unsafe-tow-lights-out = dead tow lights
name-site-unsafe-sewage-up = sewage coming up
name-site-unsafe-hurt = somebody hurt
name-site-unsafe-ill = somebody dizzy
name-site-unsafe-not-ok = somebody who is not well
name-site-unsafe-pushed = a trailer that pushes its truck
name-site-unsafe-lost = somebody lost in the cold
name-site-unsafe-stranded = somebody stuck in the snow without heat
name-site-unsafe-stuck-in-snow = a truck stuck in the snow
name-site-unsafe-gas-leak = a gas leak
name-site-unsafe-panel-hot = a panel that hums, sparks or is hot
name-site-unsafe-water-in-panel = water in a panel or outlet
name-site-unsafe-sewage-runs = sewage that runs off
name-site-unsafe-overdose = an overdose
name-site-unsafe-fight = a fight or a weapon
name-site-unsafe-emergency = an emergency
name-site-unsafe-shut-in = somebody who cannot get out
name-site-unsafe-generator-in = a generator that runs inside
name-site-unsafe-scalding = water that scalds
name-site-unsafe-wheel-loose = a loose wheel
name-site-unsafe-choking = somebody choking
name-site-unsafe-choking-at = somebody choking
name-site-unsafe-scald-burn = somebody burnt by hot water
name-site-unsafe-scald-burn-at = somebody burnt by hot water
name-site-unsafe-sewage-on-person = sewage on somebody
name-site-unsafe-sewage-on-person-at = sewage on somebody
name-site-unsafe-self-harm = somebody who may harm themself
name-site-unsafe-foul-fresh = sewage in the fresh water
name-site-unsafe-brown-water = water that looks, tastes or smells wrong
name-site-unsafe-gunshots = gunshots
name-site-unsafe-bomb-threat = a bomb threat or a suspicious thing
name-site-unsafe-assault = somebody attacked or followed
name-site-unsafe-missing-person = somebody missing
name-site-unsafe-tips = a trailer that may tip over
name-site-unsafe-gives-way = a roof or floor that gives way
name-site-unsafe-steps-loose = steps or a rail that move
name-site-unsafe-roof-ice = ice or snow coming off the roof
name-site-unsafe-flood = water rising around a trailer
name-site-unsafe-person-under = somebody under the trailer
name-site-unsafe-alarm-fire = a smoke or fire alarm
name-site-icy = ice underfoot
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
name-trouble-odor-danger = smell of gas or fuel
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
name-trouble-burnt-smell = burnt smell
name-trouble-burnt-smell-at = burnt smell
name-trouble-co-alarm = CO alarm or exhaust fumes
name-trouble-co-alarm-at = CO alarm or exhaust fumes
name-trouble-fire = fire
name-trouble-runaway = trailer loose or rolling
name-trouble-person-trapped = someone locked in
name-crew-late-check-in = no word for long
name-crew-person-hurt = someone hurt
name-desk-unknown-unit = unknown unit
name-desk-implausible = a number that cannot be
name-desk-not-allowed = not allowed

### Digest

digest-asked = Many units are out. The digest comes in a moment.
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

### Findings: actions, cautions, formulas, fact names.
### The opening (signal word, or Now, Soon, Plan) and the unit are put before an action by the program.

## Water

water-over-pressure-stop = Water { $pressure }. Do not connect. The limit is { $limit }. Fit a regulator first, set to { $regulator }. Then read it again at the trailer.
water-over-pressure-hooked = Shut the spigot now: you read { $pressure } here, and no regulator is told. The limit is { $limit }. Fit a regulator set to { $regulator }. Open slowly, then read it at the trailer.
water-over-pressure-act = Water { $pressure }, limit { $limit }. Is that before or after the regulator? Before: fit one set to { $regulator }, tap off first. After: it does not hold. Swap it.
water-over-pressure-site = This site gives { $pressure }, limit { $limit }. Shut the tap. Fit a regulator set to { $regulator }. Open slowly and read the pressure.
water-over-pressure-regulated = Water { $pressure } with the regulator on, limit { $limit }. It does not hold. Shut the tap, then set it to { $regulator } or swap it. Read again.
water-over-pressure-plan = Water { $pressure }, a bit over { $limit }. Fit the regulator, set to { $regulator }.

water-under-pressure-ask = Water { $pressure }, it needs { $limit }. Was that with water running, or all taps shut? Shut all taps and read again. Then read with one toilet filling and two taps on.
water-under-pressure-supply = Water { $pressure } with taps shut, it needs { $limit }. The supply is weak. Open the spigot all the way. Check the regulator setting. Else use a wider, shorter hose, or run on tank and pump.
water-under-pressure-flowing = Water { $pressure } with water running, it needs { $limit }. Shut all taps and read again. Low then too: weak supply. Good then: clean the inlet filter.
water-under-pressure-restriction = Water { $pressure } running, should be { $expected }. { $unexplained } is lost on the way. Clean the inlet filter first. Then look for a kink, a crushed hose or a half-shut valve.
water-under-pressure-hose = Water { $pressure } running, and { $expected } is all this hose can give. Use a wider or shorter hose. Or run on tank and pump.
water-under-pressure-act = Water { $pressure }. Under { $needed } toilets do not fill in time. Run from the tank with the pump. Then check spigot, hose and inlet filter.

water-under-pressure-later = Water { $pressure }. First do what is said of the leak or the pump. Then shut all taps and read it again.
water-pressure-falling = Water fell { $fall }, from { $before } to { $pressure }. Clean the inlet filter. Then check the hose for a kink.

water-hose-undersized = The hose can give { $given }. This trailer needs { $wanted } at its peak. Use a wider or shorter hose than { $hose } of { $bore }. Or run the peak from tank and pump.

water-hose-undersized-no-pump = The hose can give { $given }. This trailer needs { $wanted } at its peak. Use a wider or shorter hose than { $hose } of { $bore }.
water-fresh-endurance-act = Fresh tank at { $fresh }. Fill it. No water at hand: pump off before it runs dry.
water-fresh-endurance-soon = Fresh tank at { $fresh }, about { $fresh_hours } of use left. Fill it on site. Pump off if it runs empty.
water-fresh-endurance-low = Fresh tank at { $fresh }. Fill it on site. Pump off if it runs empty.
water-fresh-endurance-unread = Nobody has told the fresh level. By the crowd it may be low by now. Read it, and fill it if it is. Pump off if it runs empty.
water-fresh-endurance-plan = Fresh tank at { $fresh }. At this crowd it is low about { $fresh_at }. Plan a refill before that.

water-backflow = Water { $pressure }, under { $needed }. Dirty water can be sucked back into the main. Take every hose end out of buckets and tanks.
water-backflow-no-device = Keep the supply shut. Fit a vacuum breaker or a backflow preventer at the hose bib first. Take every hose end out of buckets and tanks. None at hand: run from the fresh tank.

## Waste

waste-book-pump-out-now = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Call the pump truck now. Truck on site by { $p10 }. It wants { $lead } notice.
waste-book-pump-out-late = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Call the pump truck now. It wants { $lead } notice: on site about { $here }. Ask if it can come by { $p10 }.
waste-book-pump-out-too-late = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Call the pump truck now. It wants { $lead } notice: on site about { $here }, too late. Ask if it can come sooner. Be ready to close stalls from { $p10 }.
waste-book-pump-out-now-called = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. The truck is wanted by { $p10 }.
waste-book-pump-out-late-called = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. The truck is wanted by { $p10 }.
waste-book-pump-out-too-late-called = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Be ready to close stalls from { $p10 }, until the truck comes.
waste-book-pump-out-any-time-called = Waste about { $level }. It may be at { $stop_level } any time, likely about { $p50 }. Close some stalls until the truck comes.
waste-book-pump-out-over-called = Waste about { $level }, past { $stop_level }. Chase the truck.
waste-book-pump-out-soon-called = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Keep the way clear for the truck.
waste-book-pump-out-high-called = Waste about { $level }. Keep the way clear for the truck.
waste-book-pump-out-plan-called = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. The truck is wanted by { $p10 }.
waste-book-pump-out-here = Waste about { $level }. Send the gallons when the truck is done.
waste-book-pump-out-unread = Nobody has read the waste tank. By the crowd it is at { $stop_level } about { $p50 }, or sooner. Read it. The pump truck wants { $lead } notice: call it in time.
waste-book-pump-out-unread-over = Nobody has read the waste tank. By the crowd it may be over { $stop_level }. Read it. The pump truck wants { $lead } notice.
waste-book-pump-out-any-time = Waste about { $level }. It may be at { $stop_level } any time, likely about { $p50 }. Call the pump truck now. It wants { $lead } notice: on site about { $here }. Close some stalls till then.
waste-book-pump-out-doubted = By the gauge waste is about { $level }, right after a pump-out. Look in with a light first, from outside. Full indeed: call the pump truck.
waste-book-pump-out-fell = If nobody pumped it, waste is about { $level }, whatever the gauge shows. Then call the pump truck. It wants { $lead } notice.
waste-book-pump-out-over = Waste about { $level }, past { $stop_level }. Call the pump truck now, or chase it. It wants { $lead } notice: on site about { $here } if you call now.
waste-book-pump-out-soon = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Pump truck booked? Who comes, and when? Keep the way clear.
waste-book-pump-out-high = Waste about { $level }. Pump truck booked? Who comes, and when? Keep the way clear.
waste-book-pump-out-plan = Waste about { $level }. { $stop_level } about { $p50 }, maybe { $p10 }. Make sure of a pump truck by { $p10 }.
waste-book-pump-out-watch = Waste about { $level }. It should not reach { $stop_level } before the end. Read the tank again later, and know which pump truck could come.

waste-close-now-stalls = Waste { $level }, stop level { $stop_level }. Close some stalls. What is left covers waves, a slope and a gauge that is off.
waste-close-now-unit = Waste { $level }. Close the whole unit. It will back up through the lowest drain.
waste-close-now-likely = Waste may be at { $level } by now, stop level { $stop_level }. Read the tank. If it is that high, close some stalls and chase the truck.
waste-close-now-likely-unit = Waste may be full by now: about { $level }. Read the tank. If it is, close the whole unit. It will back up through the lowest drain.
waste-close-now-likely-uncalled = Waste may be at { $level } by now, stop level { $stop_level }. Read the tank. If it is that high, close some stalls and call the pump truck.

waste-spill = Close the unit. Keep people and pets off, upwind. Block storm drains and water first. Shut the valve or stop the source. The dispatcher calls the authority.

waste-dropped-unexplained = Waste fell { $fall }, from { $before } to { $level }, and no pump-out is logged. If nobody pumped it, look under the trailer for an open valve or a leak. Dry there: the gauge lies. Look down a toilet with a light.

waste-gauge-doubtful-reported = Do not trust the waste gauge. Count uses. Look down a toilet with a light. Tap the tank. Rinse the probes at the next pump-out.
waste-gauge-doubtful-stuck = The waste gauge has shown { $level } for hours of use. It may be stuck with paper. Do not trust it. Look down a toilet with a light.
waste-gauge-doubtful-coated = The waste gauge shows { $level } right after a pump-out. The probe is likely coated. Rinse the tank. Do not trust the gauge until it reads low.

## Cold and heat

cold-freeze-soon-tap-shut = Air { $air }. With the tap shut the hose stands and can freeze. Bleed it at a sink, take it off, drain it. Run from the tank until it flows again.
cold-freeze-soon-now-tap-shut = Air { $air }, wind { $wind }. Tap shut, so the hose stands. It is at freezing in { $hose_min } and may block in { $block_min }. Bleed it at a sink, take it off, drain it. Run from the tank until it flows again.
cold-freeze-soon-now-tap-shut-wind-taken = Air { $air }. Tap shut, so the hose stands. It is at freezing in { $hose_min } and may block in { $block_min } (wind taken as { $wind }). Bleed it at a sink, take it off, drain it. Run from the tank until it flows again.
cold-freeze-soon-now-tap-shut-heater = Air { $air }, wind { $wind }. Tap shut, so the hose stands. It is at freezing in { $hose_min } and may block in { $block_min }. Bleed it at a sink, take it off, drain it. Run from the tank until it flows again. Read the heater's amps, not just its switch.
cold-freeze-soon-now-tap-shut-heater-wind-taken = Air { $air }. Tap shut, so the hose stands. It is at freezing in { $hose_min } and may block in { $block_min } (wind taken as { $wind }). Bleed it at a sink, take it off, drain it. Run from the tank until it flows again. Read the heater's amps, not just its switch.
cold-freeze-soon-soon-plain = Air { $air }, freezing. Bay heat on. Wrap the hose and all wet ends. Keep water moving.
cold-freeze-soon-plan = Air { $air }. Frost is near. Cold package fitted and its breaker on? Plan how to drain hose and tanks.
cold-freeze-soon-soon = Air { $air }, freezing. Bay heat on, tank heater on. Wrap the hose and all wet ends. Keep water moving.
cold-freeze-soon-now = Air { $air }, wind { $wind }. A still hose is at freezing in { $hose_min } and may block in { $block_min }. Heat it, keep it moving, or drain it and run from the tank.
cold-freeze-soon-now-wind-taken = Air { $air }. A still hose is at freezing in { $hose_min } and may block in { $block_min } (wind taken as { $wind }). Heat it, keep it moving, or drain it and run from the tank.
cold-freeze-soon-now-heater = Air { $air }, wind { $wind }. A still hose is at freezing in { $hose_min } and may block in { $block_min }. Keep it moving, or drain it and run from the tank. Read the heater's amps, not just its switch.
cold-freeze-soon-now-heater-wind-taken = Air { $air }. A still hose is at freezing in { $hose_min } and may block in { $block_min } (wind taken as { $wind }). Keep it moving, or drain it and run from the tank. Read the heater's amps, not just its switch.
cold-freeze-soon-no-power = No power and { $air }: the freeze clock runs. Hose may block in { $block_min }, valves soon after, fresh tank in about { $tank_hours }. Drain the hose first. Then pump and heater lines. Then the tanks.
cold-freeze-soon-no-power-still = No power and { $air }: the freeze clock runs. Drain the hose first. Then pump and heater lines. Then the tanks. Get power back or bring a generator.
cold-freeze-soon-no-power-held = No power, and { $air } when last read at { $air_at }: the freeze clock runs. Nobody wrote of warmer air. Drain the hose first. Then pump and heater lines. Then the tanks. Get power back or bring a generator.
cold-freeze-soon-no-power-low = No power, and a low of { $low } tonight: the freeze clock runs. Drain the hose first. Then pump and heater lines. Then the tanks. Get power back or bring a generator.
cold-freeze-soon-held = { $air } when last read at { $air_at }, and nobody wrote of warmer air. Take it that it freezes. Heaters on, and read their amps. Keep water moving. Then read the air.
cold-freeze-soon-danger = No power, and it freezes. Nobody goes to it while the danger stands. Once it is over: drain the hose first, then the lines, then the tanks.
cold-freeze-soon-after = No power for { $off } at { $air }: hose, valves and pump may be frozen. Look for ice and splits before you run water. Heater on only once its tank is full. Then send heater amps and flow.
cold-freeze-soon-after-low = No power for { $off }, and a low of { $low }: hose, valves and pump may be frozen. Look for ice and splits before you run water. Heater on only once its tank is full. Then send heater amps and flow.
cold-freeze-soon-tonight-plan = A low of { $low } is due. Frost is near. Cold package fitted and its breaker on? Plan how to drain hose and tanks.
cold-freeze-soon-tonight = A low of { $low } is due. Before it comes: heaters on, hose and wet ends wrapped. No heat: drain the hose and run from the tank.

cold-tank-heater-on = Freezing, and no word that the tank heater is on. Turn on circuit { $circuit }: tank and bay heater. Read its amps. A warm switch proves nothing.
cold-tank-heater-on-power-off = The heaters stay off until the power is cleared. It freezes: drain the hose first. Then pump and heater lines. Then the tanks.
cold-tank-heater-on-low-volts = Freezing, and no word that the tank heater is on. First the other big loads off. Then the tank heater on. Read volts and amps again.
cold-tank-heater-on-tonight = A low of { $low } is due, and no word that the tank heater is on. Turn on circuit { $circuit }: tank and bay heater. Read its amps.
cold-tank-heater-on-plain = Freezing, and no word that the tank heater is on. Turn on tank and bay heater. Read their amps.
cold-tank-heater-on-off = The heater is off at { $air }. Turn it on and read its amps. It stays off: drain the hose, then pump and heater lines, then the tanks.
cold-tank-heater-on-none = Freezing, and { $amps } on the tank and bay heater (circuit { $circuit }): they are cold. Switch them on. Check breaker, plug and thermostat. Read the amps again.
cold-tank-heater-on-dead = Heater is on, but circuit { $circuit } reads { $amps }. It is off: tripped, unplugged, or stopped by its thermostat. Check breaker, plug and thermostat. Read the amps again.
cold-tank-heater-on-weak = Heater is on, but circuit { $circuit } reads { $amps }. Its smallest heater draws { $load }. Most likely an element or a thermostat is out, or it is another circuit. Check which, and read again.

cold-no-cold-package-plan = No cold package on this trailer. Plan to drain it before it freezes.
cold-no-cold-package-soon = No cold package, and it freezes. Drain hose and wet ends. Bay heat on. Drain the tanks if it gets colder.
cold-no-cold-package-tonight = No cold package, and a low of { $low } is due. Drain hose and wet ends before dark. Bay heat on.
cold-no-cold-package-now = No cold package at this cold. It cannot stay in service. Take it out.

cold-winterize = Too cold to run without a cold package. Drain it, winterize it or take it away. Order: water heater off, let it cool, drain it. Then tanks and low points, blow out, pink antifreeze through.

cold-crew-cold-plan = Feels like { $chill }. Dry gloves, and a spare pair.
cold-crew-cold-act = Feels like { $chill }, wind { $wind }. Frostbite within 30 min. Work in twos. Go in every 15 min.
cold-crew-cold-act-wind-taken = Feels like { $chill } (wind taken as { $wind }). Frostbite within 30 min. Work in twos. Go in every 15 min.
cold-crew-cold-stop = Feels like { $chill }, wind { $wind }. Frostbite in about 10 min. Stop all but emergency work.
cold-crew-cold-stop-wind-taken = Feels like { $chill } (wind taken as { $wind }). Frostbite in about 10 min. Stop all but emergency work.
cold-crew-cold-person = Get to a warm place now, and tell someone where you are. Put on dry clothes. Drink something warm, no alcohol. Warm numb skin slowly against the body. Do not rub it. Confused, or the shaking stops: call the emergency number.

heat-crew-heat-plan = Feels like { $heat_index }. Drink water every 15 to 20 min.
heat-crew-heat-plan-dry = Feels like { $heat_index } in dry air. What is the humidity? Drink water every 15 to 20 min.
heat-crew-heat-soon = Feels like { $heat_index }. Take breaks in the shade. Drink water every 15 min. Watch each other.
heat-crew-heat-soon-dry = Feels like { $heat_index } in dry air. What is the humidity? Take breaks in the shade. Drink water every 15 min. Watch each other.
heat-crew-heat-act = Feels like { $heat_index }, more in full sun. Move heavy work to the morning. Shade, water, work in twos.
heat-crew-heat-act-dry = Feels like { $heat_index } in dry air, more in full sun. What is the humidity? Move heavy work to the morning. Shade, water, work in twos.
heat-crew-heat-stop = Feels like { $heat_index }. Emergency work only. Get everyone into shade or a cooled room.

## Power

power-shock = Kill the power at the source with dry hands: site breakers off, or cords pulled there. Nobody touches metal, steps or water. Close the unit and keep people off. Never reset it to try.

power-low-voltage-soon = { $volts }, low. Run one AC at a time. Check cord length and plugs. Is that reading under load?
power-low-voltage-act = { $volts }, limit { $limit }. AC off, other big loads off. Use a shorter or thicker cord. Tell the site's electrician.
power-low-voltage-dead = { $volts }: that outlet is dead. Check the breaker, then the cord, plug by plug. Tell the site.

power-high-voltage-plan = { $volts }, a bit high. Read it again in a while. Watch the converter.
power-high-voltage-act = { $volts }, limit { $limit }. Unplug electronics. Turn off what you can. Tell the site's electrician.
power-high-voltage-open-neutral = { $volts }: the neutral may be open. All breakers off. Leave them off. Call a licensed electrician.
power-high-voltage-split = { $high } on one and { $low_leg } on another: the neutral may be open. All breakers off. Leave them off. Call a licensed electrician.
power-high-voltage-battery = Battery at { $volts }, too high. Switch the converter's breaker off. Open the bay to let gas out.

power-over-current-act = { $amps } on a { $breaker } breaker. Shed load: AC or heat off, then the water heater. The plug gets hot before the breaker trips.
power-over-current-soon = { $amps } for hours, limit { $continuous }. Shed load on that cord.
power-over-current-plan = { $amps }, over the { $continuous } a circuit carries for hours. Fine for a short time. Shed load if it stays.

power-shared-circuit-converter = Circuit { $circuit } at { $amps }: water heater and converter together. One at a time. Heater off, let the battery charge first, heat water later.
power-shared-circuit-air = Circuit { $circuit } at { $amps }: more than AC or heat alone. Are both on? Turn one off.
power-shared-circuit-two-air = Circuit { $circuit } at { $amps }: two ACs together. Turn one off.
power-shared-circuit-air-told = AC and heat on together draw { $together } on circuit { $circuit }. It carries { $continuous } for hours. Turn one off.
power-shared-circuit-two-air-told = Two ACs together draw { $together } on circuit { $circuit }. It carries { $continuous } for hours. Turn one off.
power-shared-circuit-converter-told = Water heater and converter together draw { $together } on circuit { $circuit }. It carries { $continuous } for hours. Heater off, let the battery charge first.

power-cord-drop-plan = { $cord } of { $gauge } cord loses { $drop } at { $amps }. A thicker or shorter cord is better.
power-cord-drop-soon = { $cord } of { $gauge } cord loses { $drop } at { $amps }: about { $volts_expected } is left. Use a thicker or shorter cord. An AC that hums and stops is starved, not broken.
power-cord-drop-measured = Volts fell { $fall } under load, from { $before } to { $volts }. Cord, plug or outlet. Power off, then feel each plug for heat.

power-cord-overloaded = { $amps } on a { $gauge } cord made for { $cord_amps }. Shed load, or use a thicker cord. Feel the plug for heat with power off.

power-too-few-circuits = { $cords ->
        [one] One cord
       *[other] { $cords } cords
    }, but { $cords_needed } circuits are needed. { $feed_count ->
        [one] Feed circuit
       *[other] Feed circuits
    } { $feed }: circuit { $converter_circuit } keeps lights and pumps alive. Will not run: { $left_out }.
power-too-few-circuits-power-off = Feed no circuit until the power is cleared. Then the converter's circuit first.
power-too-few-circuits-cold = { $cords ->
        [one] One cord
       *[other] { $cords } cords
    }, but { $cords_needed } circuits are needed in this cold. { $feed_count ->
        [one] Feed circuit
       *[other] Feed circuits
    } { $feed }: circuit { $converter_circuit } first, then the tank heater. Will not run: { $left_out }.

power-on-battery-ask = { $cords ->
        [one] One cord
       *[other] { $cords } cords
    } for { $circuits } circuits. Is circuit { $converter_circuit } fed? If not, the converter is dead and the battery drains: about { $battery_hours } left.
power-on-battery-ask-plain = { $cords ->
        [one] One cord
       *[other] { $cords } cords
    } for { $circuits } circuits. Is circuit { $converter_circuit } fed? If not, the converter is dead and the battery drains.
power-on-battery-power-off = Lights and pumps live on the battery while the power is off. Leave it off until it is cleared.
power-on-battery-circuit = Circuit { $converter_circuit } has no power, so the converter is dead. The battery drains: about { $battery_hours } left. Move a cord to circuit { $converter_circuit }.
power-on-battery-circuit-plain = Circuit { $converter_circuit } has no power, so the converter is dead. The battery drains. Move a cord to circuit { $converter_circuit }.
power-on-battery = No site power. Lights and pumps live on the battery: about { $battery_hours }. AC, heat and hot water are off.
power-on-battery-plain = No site power. Lights and pumps live on the battery. AC, heat and hot water are off. Read the battery volts.
power-on-battery-down = No site power, and the battery is at half or less. Get power back or bring a generator. AC, heat and hot water are off.
power-on-battery-fresh-first = No site power. Battery lasts about { $battery_hours }, fresh water about { $fresh_hours }. The water ends first: plan a refill. AC, heat and hot water are off.
power-on-battery-battery-first = No site power. Battery lasts about { $battery_hours }, fresh water about { $fresh_hours }. The battery ends first: bring a generator. AC, heat and hot water are off.

power-battery-low-plan = Battery { $volts }, about { $charge }. Charge it within the day.
power-battery-low-soon = Battery { $volts }, below half. Get power back, or turn fans off. Was that at rest, or under load?
power-battery-low-soon-rest = Battery { $volts } at rest, below half. Get power back, or turn fans off.
power-battery-low-act-rest = Battery { $volts } at rest, nearly flat. Fans and pumps off. No power: disconnect it, and close the unit or bring a generator. Power back: connect it, then charge it.
power-battery-low-act = Battery { $volts }, nearly flat. Fans and pumps off. No power: disconnect it, and close the unit or bring a generator. Power back: connect it, then charge it. Was that at rest, or under load?
power-battery-low-flat = Battery { $volts }, flat. Pumps stall and valves drop out. Loads off, then disconnect it: more use harms it. Close the unit or bring a generator. Power back: connect it, then charge it.
power-battery-low-plan-charge = Battery at { $charge }. Charge it within the day.
power-battery-low-soon-charge = Battery at { $charge }, below half. Get power back, or turn fans off.
power-battery-low-act-charge = Battery at { $charge }, nearly flat. Fans and pumps off. No power: disconnect it, and close the unit or bring a generator. Power back: connect it, then charge it.
power-battery-low-flicker = Lights flicker: most often a low battery, a loose ground or a bad lamp socket. Lights on 120 V flicker too: the neutral may be loose. Then main off, call a licensed electrician.
power-battery-low-told = Battery low. Read its volts at rest. Is the converter's circuit live? Turn fans off until it charges.

power-generator-soon = The generator gives { $generator_w }. All loads run at { $running_w } and need { $needed_w } to start an AC. Start one AC at a time, the heater last. Or bring a bigger one.
power-generator-act = The generator gives { $generator_w }. All loads together run at { $running_w }, and { $needed_w } starts an AC. Leave one AC or the water heater off. Or bring a bigger one.
power-generator-soon-heat = The generator gives { $generator_w }. All loads run at { $running_w }. At { $altitude } and { $air } that asks for one of { $needed_w }. Leave one heater off. Or bring a bigger one.
power-generator-act-heat = The generator gives { $generator_w }. All loads together run at { $running_w }. At { $altitude } and { $air } that asks for one of { $needed_w }. Leave heaters off, the water heater first. Or bring a bigger one.
power-generator-inside = Everybody out into fresh air. Exhaust kills, and nobody smells it. Generator or burner off, if you can do it without breathing the exhaust. Move it 20 ft from doors, windows and tents. Anyone dizzy or with a headache: call the emergency number.

## Crowd

crowd-under-served = { $stalls } stalls will be { $busy } busy at the peak. Lines will grow. Ask for more stalls, and keep these clean and stocked.
crowd-under-served-stall-out = { $stalls_out ->
    [one] One stall out leaves
   *[other] { $stalls_out } stalls out leave
} { $stalls }. They will be { $busy } busy at the peak. Get stalls back, or ask for more.
crowd-under-served-act = { $stalls } stalls cannot keep up at the peak ({ $busy } busy). The line will not end. Tell the dispatcher: more stalls are needed.
crowd-under-served-act-stall-out = { $stalls_out ->
    [one] One stall out leaves
   *[other] { $stalls_out } stalls out leave
} { $stalls }, and they cannot keep up at the peak ({ $busy } busy). Get stalls back first. Tell the dispatcher: more stalls are needed.

## Site

site-not-level-soon = { $slope } off level, limit { $limit }. Level it. Doors swing, and gauge and drain go wrong.
site-not-level-act = { $slope } off level, limit { $limit }. Move it or block it up. Close it to guests until then.
site-not-level-told = Not level. Level it side to side first. Doors swing, and gauge and drain go wrong.
site-not-chocked = Stop. Chock both sides before anything else. An unhitched trailer can roll.
site-not-chocked-out = Chocks out, and nobody said that it is on the hook. Put them back, both sides, until it is hitched.
site-wind-soon = Wind { $wind }. Take awnings in. Hold the doors. Tie down what is loose.
site-wind-act = Wind { $wind }. Nobody on roof or steps. Awnings in, doors shut. Close the unit if it rocks.
site-unsafe-no-chocks = Do not unhitch. Keep it on the hook, parking brake on, until both sides are chocked. Unhitched already: people away, hitch it up again first. A stone or a block is no chock: it slips. Get a pair brought.
site-unsafe-dumped = Sewage never goes on the ground, into a ditch or a drain. Stop, shut the valve. Keep people and animals off it, block the drain. It counts as no pump-out. The dispatcher calls the authority.
site-unsafe-wheel-loose = Do not tow it. Rolling already: pull over where it is safe, slowly. A wheel with loose or missing nuts comes off. Chock the other side, then tighten them crosswise with a torque wrench. Studs bent or gone: a shop. Check them again after a few miles.
site-unsafe-battery-gassing = Get away from it, faces off. No spark, no flame, no smoking. Cut the charger at its breaker, if that is not beside the battery. Open the bay and air it. Do not touch cables or caps.
site-unsafe-battery-frozen = Do not charge it and do not jump it: a frozen battery can burst and spray acid. Switch its charger off. Nobody thaws it with heat. Wear glasses and gloves, and set it aside in a cool shed. Bulged or cracked: it is done. Fit another one.
site-unsafe-backfeed = Stop. Do not touch those plugs: their pins are live. Switch the source off first, then pull the cord there. Power fed backwards kills on the line and on the metal. Take that cord away. A licensed electrician looks before power is on again.
site-unsafe-refuel-running = Stop pouring. Step back, can away, no flame. Engine off, if you can reach it safely. Let it cool 15 min before you fill it. On fire: get away, call the emergency number.
site-unsafe-bypassed = Power off at the source now. Take the bypass out before anything is on again. Without GFCI and ground a fault makes all metal live. Close what runs on it. If it trips then, leave it off.
site-unsafe-power-strip = Unplug it at the source now. A power strip is made for small loads: under this one it heats up and burns. Run each cord straight to an outlet of its own. What is brown or melted stays out.
site-unsafe-breaker-held = Switch it off now, at the source if it does not go. Take the tape or wedge off. A breaker that is held on lets the wires burn. Leave that circuit off until an electrician has looked.
site-unsafe-generator-near = Engine off, or move it 20 ft (6 m) or more from doors and windows. Exhaust pointing away. Everybody out until it is aired. Headache, dizzy or sick: emergency call.
site-unsafe-fuel-heater = Out with it now: a fuel heater or grill inside or at a window kills without a smell. Everybody out until it is aired. Headache, dizzy or sick: emergency call.
site-unsafe-cord-in-water = Power off at the source first, with dry hands. Do not step in that water or pick up the cord before. Then lift it clear, dry the plugs, hang them off the ground. A wet or cut one stays off.
site-unsafe-people-inside = Get everybody out now, by voice: nobody goes in for them or touches metal. Close the unit, somebody at the door. Count them. Somebody does not answer: call the emergency number.
site-unsafe-water-on-fire = No more water: near power it can kill you. Everybody out and away. Power off at the source if you can reach it safely. Call the emergency number. Do not go back in.
site-unsafe-road-loose = Pull over where it is safe, hazard lights on. Call the emergency number: a loose trailer kills. Say which road, which way, and the nearest exit or mile. Keep everybody off the roadway. Do not run after it. Once it is still and they say so: chock it.
site-unsafe-exhaust-in = Everybody out into fresh air. Engine off, if you can reach it without breathing the exhaust. Then move it 20 ft (6 m) or more from doors and windows, exhaust pointing away. Headache, dizzy or sick: emergency call.
site-unsafe-generator-at-door = Engine off, if you can reach it without breathing the exhaust. Then move it 20 ft (6 m) or more from doors and windows. Everybody out until it is aired. Headache, dizzy or sick: emergency call.
site-unsafe-generator-behind = How far is it from doors, windows and vents? Under 20 ft (6 m): engine off, move it, everybody out until it is aired. Outside is not enough: exhaust drifts in. Headache, dizzy or sick: emergency call.
site-unsafe-engine-at-door = Engine off or away now: 20 ft (6 m) or more from doors, windows and vents. Everybody out until it is aired. Headache, dizzy or sick: emergency call.
site-unsafe-needle = No bare hand, and gloves do not stop a needle. Keep people out. Tongs or pliers, point away from you. Into a hard box with a lid, never into a bag or the toilet. No box: close the room, have one brought. Stuck by it: say so at once.
site-unsafe-needle-how = Not by hand: gloves do not stop a needle. Tongs or pliers, point away from you, into a hard box with a lid. Never into a bag, the trash or the toilet.
site-unsafe-needle-stick = Wash it now with soap and running water for five minutes. Do not squeeze or suck it, no bleach. Cover it. See a doctor or an emergency room now, within hours: some medicine works only early. Keep the needle in a hard box. The dispatcher goes on for you.
site-unsafe-spill-drain = Stop it at the source, and block that drain with soil or a cover now. Tell your dispatcher where the drain is and how much went in. The dispatcher calls the authority now. Wash nothing into it.
site-unsafe-smoking = No flame there: tank gas and propane burn. Cigarettes out, people 20 ft (6 m) away, upwind. Smell of gas: everybody out, emergency call.
site-unsafe-tank-entry = Stop. Nobody goes into a tank, nor puts head or arms in. Its gas kills in seconds. Whatever fell in stays there until the pump truck comes. Somebody is in there already: call the emergency number, and stay out yourself.
site-unsafe-under-jack = Get out from under it now. A jack slips without warning. Chock both sides, then rated stands under the frame, level ground. Until then nobody goes under.
site-unsafe-fuse-wrong = Power off, and take it out now. The wire burns before that fuse blows. Fit the size that is printed there, or leave it out. It blows again: an electrician looks first.
site-unsafe-thaw-heat = Stop that. Flame out, heat gun off. It melts hose and pipe, and can set walls and gas on fire. Open the tap, then warm towels or warm air, from the tap back. Feel for a split pipe first.
site-unsafe-relief-valve = Power to the water heater off, at its breaker. Gas heater: gas off. Stand clear, people away: the tank can burst. Never plug or cap that valve. Let it cool. A licensed plumber looks before it is on again.
site-unsafe-space-heater = Switch it off and unplug it. A heater like that burns thin cords and plugs. Never on an extension or a strip, never near paper or curtains. Plug or cord hot or brown: out of use. Use the built-in heat.
site-unsafe-power-line = Stay 35 ft (10 m) or more from that line, the trailer and all it touches. The ground may be live. In the truck: stay in and keep others off. Call the emergency number, then the power company. Only they say when it is off. Fire in the truck: jump clear, land on both feet together, shuffle away. Never touch truck and ground at once.
site-unsafe-power-line-hurt = Do not go to them. Stay 35 ft (10 m) or more from that line and all it touches. The ground may be live. Call the emergency number, then the power company. Only they say when it is off. Then help.
site-unsafe-swaying = Foot off the gas. Hold the wheel straight. Brake gently by the trailer brake alone, if you have a lever. No hard brake, no swerving. Then pull over safely and stop. Check tanks, tires, hitch and load before you go on, slower. Leave the phone until you stand.
site-unsafe-open-neutral = The neutral may be open. All breakers off now, and leave them off. Nobody switches anything on. Call a licensed electrician and the office.
site-unsafe-wreck = Is anyone hurt? Emergency number first. Engine off, flashers on. Everybody out on the side away from traffic, well off the road. Leave the rig where it is. Then phone the office: where you are, who is hurt, what leaks.
site-unsafe-sliding = Driving: foot off the gas, steer straight, brake gently. Then stop where it is safe. Parked: people out of its path, and let it go. Chock it only once it stands. Anyone hurt: emergency number first.
site-unsafe-wind-tips = Everybody out of it now, on the side the wind comes from. Stay away from it by more than its height. Close it, and rope off the side it would fall to. Nobody on jacks, steps or roof. Wait in a truck or building until the wind drops. Anyone hurt: emergency number first.
site-unsafe-shared-outlet = Power off there, and give each cord an outlet of its own, on its own breaker. Two on one heat it until it burns. No splitter, no adapter. What is warm or brown stays out.
site-unsafe-towed-attached = Pull over where it is safe, flashers on, well off the lane. Engine off, chock it. Put up or take off what hangs out. Look at what it tore at the site: shut that water or power there. Look for damage before it rolls on. Never reach under it.
site-unsafe-blowout = Hold the wheel straight. Foot off the gas, no hard brake. Let it slow, then pull well off the road. Flashers on, everybody out on the side away from traffic. Do not change it beside traffic: call for help.
site-unsafe-drowsy = Pull over now, where it is safe. Chock it, and sleep or let somebody else drive. Coffee and an open window do not help. Nobody is angry about a late trailer: tell the dispatcher.
site-unsafe-hose-whips = Everybody clear of that hose: its fitting breaks bones. Shut the water at the hydrant or spigot, from the far side. Do not grab it. Once it lies still: bleed it at a sink, then a new hose and gasket. Pressure and regulator are read before guests come back.
site-unsafe-bowl-over = Nobody flushes. Shut the water stop behind it, and close that stall. It is sewage: people out of it, gloves, boots and eye shield. More than one runs over: close the unit, read the waste tank.
site-unsafe-drain-cleaner-in = No plunger and no auger now: it splashes into eyes. Nobody flushes, and nothing else is poured on it. Close that stall, air it. Tell whoever works on it, plumber too. On skin or in eyes: clean water for 15 min, emergency number.
site-unsafe-cord-taped = Tape mends no cord. Breaker at the source off, then unplug it, dry hands. Out of use, its ends marked. Another cord of the same size, or that circuit stays off.
site-unsafe-fuel-heater-meant = No. Do not bring it in, and do not light it there. Its gas has no smell and kills in minutes, and it can set the trailer on fire. Heat by the trailer's own heaters, or close it and go in to warm up.
site-unsafe-on-the-roof = Come down first. In wind, wet, ice or snow nobody goes up. A roof cover or a vent does not carry you. Snow comes off from the ground, with a rake. Up only with a second person and a tied ladder.
site-unsafe-battery-jumped = Not if it is frozen or swollen. Eye shield on, no flame. Plus to plus first, last clamp on bare metal away from the battery. Off in the other order. A charger is the better way. It does not hold: the converter or the battery is gone.
site-unsafe-held = Do not touch them. Cut the power at the source now: site breaker off, or pull the cord there. Cannot: push them off with dry wood or plastic, standing dry. Then the emergency number. No breath: push on the chest.
site-unsafe-mixed-cleaners = Everybody out now, upwind, doors open on the way. That gas burns the lungs. Nobody goes back in, and nobody pours anything on it. Coughing, burning eyes or short of breath: call the emergency number.
site-unsafe-tank-gas-strong = A strong smell can be tank gas, and that kills. Everybody out, upwind, doors open on the way. No flame, no smoking, no switch. Nobody goes back in, for a drain or a fan neither. Sick, dizzy or a headache: call the emergency number. Gone from your nose is no all-clear.
site-unsafe-tank-gas = Rotten eggs can be tank gas. Everybody out, upwind, doors open. No flame, no smoking. Nobody puts a head into a tank or a hatch. Gone from your nose at once, or a headache: that is a danger. Only if it is faint and near one drain: a quart of water into it.
stays-site-unsafe-power-line = { $unit }: the line still counts as live, power back or not. Do not touch, move or cross it. Stay 35 ft (10 m) off. In the truck: stay in. Only the power company, or their electrician, ends it. Then text "power company cleared the line".
stays-told = { $unit }: { $who } writes { $quote }. Still open there: { $what }. Phone them.
site-unsafe-pushed = Foot off the gas, lowest gear. Use the trailer brake lever first, if you have one. Brake hard in short bursts. Let the brakes cool between them. Horn and flashers on. Steer for a ramp, an uphill or open ground. Once you stand: chock it, and leave it until the brakes are checked. Leave the phone until then.
site-unsafe-lost = Call the emergency number now: it can find your phone. Stay where you are, out of the wind, off the ground. Hat and gloves on, keep moving your hands and feet. Make noise and light. Spare the battery. In a truck: stay in it.
site-unsafe-stranded = Call the emergency number now: without heat this kills. Stay with the truck: walking off kills more. Dig the exhaust pipe free before the engine runs. Then run it 10 min an hour, one window open a crack. Put on all you have, and move. Tie something bright outside.
site-unsafe-stuck-in-snow = Stay with the truck, phone the office where you are. Dig the exhaust pipe free before the engine runs. A blocked pipe fills the cab with a gas that kills. Keep people out from between truck and trailer while it is pulled. Cold, and no heat: emergency number.
site-unsafe-panel-hot = Stay off that panel: it can arc or burn. Power off at the source, site breakers off or cords pulled there, dry hands. Close what runs on it. Smoke or flame: everybody out, call the emergency number. It stays off until an electrician has opened and cleared it.
site-unsafe-water-in-panel = Do not touch that panel or that water. Power off at the source, site breakers off or cords pulled there, dry hands. Everybody out, keep people off the metal and the steps. Then shut the water. It stays off until an electrician has looked, even once it is dry.
site-unsafe-overdose = Call the emergency number now: say it may be an overdose. Not breathing: push on the chest. Naloxone at hand: give it as its label says. Breathing: lay them on their side, stay and watch. Touch no powder, no needle.
site-unsafe-fight = Get away and take your crew with you. Call the emergency number: police. Do not step in, do not block their way out. Lock yourself in if you cannot leave. Stay away until the police say it is safe. Somebody hurt: say so in that call.
site-unsafe-emergency = Anyone hurt or in danger: call the emergency number now. Say where you are, and stay on the line. Then send what is wrong here: hurt, fire, gas, shock, cold, a crash. Get away from what can hurt you.
site-unsafe-shut-in = Phone the office and the emergency number: say which room, and that you are shut in. Shout and bang, let nobody pull on wires. Push low by the hinges, then hard by the latch. Keep the vent open and keep warm. No flame and no burner in there.
site-unsafe-scalding = Hot taps closed to guests now, a sign on each. Its breaker off, thermostat to 120 °F (49 °C) or less. Let hot water run until it cools, hands off. Still too hot: it stays off until a plumber or an electrician looked. Burnt skin: cool running water, 20 min.
site-unsafe-gas-collapse = Keep away from the opening, even to help: the air there kills. Everybody out and upwind. Emergency number now: say a person is down from tank gas. Only rescuers with their own air go to them.
site-unsafe-choking = Can they cough or talk: let them cough. If not: five hard blows between the shoulder blades, bent forward. Then five thrusts, in and up above the navel. Go on in turns until it is out. Somebody else calls the emergency number now. A baby or a pregnant woman: as the emergency line tells you. Goes limp: lay them down, push hard on the chest.
site-unsafe-choking-at = Can they cough or talk: let them cough. If not: five hard blows between the shoulder blades, bent forward. Then five thrusts, in and up above the navel. Go on in turns until it is out. Somebody else calls the emergency number now: say { $address }. A baby or a pregnant woman: as the emergency line tells you. Goes limp: lay them down, push hard on the chest.
site-unsafe-scald-burn = Cool running water on the burn for 20 min. No ice, no cream. Rings and wet clothes off, but not what sticks. Then cover it with something clean. A child, face, hands, or larger than a palm: call the emergency number. Close that tap to guests. Water heater off at its breaker.
site-unsafe-scald-burn-at = Cool running water on the burn for 20 min. No ice, no cream. Rings and wet clothes off, but not what sticks. Then cover it with something clean. A child, face, hands, or larger than a palm: call the emergency number. Say you are at { $address }. Close that tap to guests. Water heater off at its breaker.
site-unsafe-sewage-on-person = Rinse eyes and mouth with clean water now, for 15 min. Spit, do not swallow. Contact lenses and wet clothes off. Wash skin and cuts with soap. Then see a doctor, even if it feels fine: say that it was sewage. Pain, blurred sight, or a lot swallowed: call the emergency number. Nobody goes to that valve without gloves and a face shield.
site-unsafe-sewage-on-person-at = Rinse eyes and mouth with clean water now, for 15 min. Spit, do not swallow. Contact lenses and wet clothes off. Wash skin and cuts with soap. Then see a doctor, even if it feels fine: say that it was sewage. Pain, blurred sight, or a lot swallowed: call the emergency number. Say you are at { $address }. Nobody goes to that valve without gloves and a face shield.
site-unsafe-self-harm = Stay with them, and do not leave them alone. Call the emergency number, or a crisis line. Listen. Do not argue, do not promise to keep it secret. Move away what they could use, if that is safe for you. Keep guests away. Are you the one? Call now, and go to somebody near you.
site-unsafe-foul-fresh = Close the unit's taps and toilets now, a sign on each: do not drink, do not wash. Fresh pump off, water shut. Fill nothing more. Tank, heater and lines are drained, disinfected, flushed and tested. That hose is for waste from now on. Somebody drank or washed there: ask a doctor. The health office and a licensed plumber decide when it is good.
site-unsafe-brown-water = Close the taps to guests until you know why. Run the site's spigot by itself: clear there, then it is the trailer. Ask the site about its water. Any chance that sewage or the waste hose got in: nobody uses it. Then drain and disinfect it all. Local code and a licensed plumber decide.
site-unsafe-gunshots = Get away if the way is clear. Else get down behind something solid, door locked, lights off, phone silent. Call the emergency number as soon as you can: police. Take who is near with you. Nobody goes out to look. Stay until the police come for you. Hands empty and open then.
site-unsafe-bomb-threat = Touch nothing. Everybody out and far away, out of sight of it. No phone or radio beside it. Call the emergency number from there: police. Write down the words of the threat, or where the thing lies. Nobody goes back until the police say so.
site-unsafe-assault = Bring them where it is safe, and stay with them. Call the emergency number: police. Do not chase or hold the other one: note how they look and where they went. Close that stall and touch nothing: it may be proof. Ask before you do anything for them.
site-unsafe-missing-person = Call the emergency number and tell the site's staff now. Say name, age, clothes, where last seen. No truck or trailer moves until they are found. Look in every stall and bay, under trailers, by water and roads. One person stays where they were last seen. In the cold each minute counts.
site-unsafe-tips = Everybody out, on the high side, and away from it by more than its height. Close it, and rope off the side it would fall to. Nobody on steps, roof or jacks, nobody under it. Do not level it, hold it or prop it up by hand. Cords and hoses: off at the source, not at the trailer. Then phone the office: a tow firm sets it right. Anyone hurt: emergency number first.
site-unsafe-gives-way = Everybody out now, and away from it. Close it. Nobody on that roof, under it or on that floor. Snow: nobody climbs up or shovels from a ladder. Phone the office. It stays closed until somebody who knows the frame has looked. Anyone under it: emergency number.
site-unsafe-steps-loose = Close that door. Rope off the steps: nobody on them, you neither. Send people to the other door. Set the feet level, pins in, rail tight, then try them without guests. Bent or cracked: they stay off.
site-unsafe-roof-ice = Rope off where it comes down, 10 ft (3 m) or more. Doors and steps below it stay closed. Nobody stands below to knock it off, nobody on the roof. Knock icicles down from the side, with a long pole, away from wires. Somebody hit: emergency number.
site-unsafe-flood = Everybody out, to high ground. Power off at the source only if you get there dry. Else keep all out of that water: it can be live. Do not walk or drive through moving water. Leave trailer and truck: they float and roll. Somebody cut off by water: emergency number. Before it is used again: an electrician, and the fresh water disinfected.
site-unsafe-person-under = Do not move trailer or truck, engine off. Nobody touches jacks, chocks or the hitch. Call them out by voice. Caught, hurt or no answer: call the emergency number. Do not lift it and do not pull: rescue does that. Nobody else goes under. Before you move it: look under it, all around.
site-icy = Ice underfoot. Put down sand and a mat, and shut that door until it is safe. On aluminum steps: sand, or an ice melt marked safe for aluminum, no rock salt. Hold the rail. Shut off the water that makes the ice.

site-set-up-next-level = next: level it side to side. Then chock both sides, unhitch, and put the jacks down. Then power, then water.
site-set-up-next-chock = next: chock both sides before you unhitch. Then unhitch, and level front to back with the tongue jack.
site-set-up-next-unhitch = next: unhitch. Then level front to back with the tongue jack. Stabilizers last.
site-set-up-next-jacks = next: jacks down. They steady it, they do not lift it. Then power.
site-set-up-next-power = next: power. Feed circuit { $converter_circuit } first: it keeps lights and pumps alive. Then read the volts.
site-set-up-next-power-generator = next: power from the generator. Feed circuit { $converter_circuit } first: it keeps lights and pumps alive. Then read the volts.
site-set-up-next-volts = next: read the volts at the trailer, with a load on. Send the number.
site-set-up-next-regulator = next: the regulator, set to { $regulator }. This site gives { $static }, limit { $limit }. Then the hose, and open slowly.
site-set-up-next-water = next: water. Hook up, open slowly, let air out, look for leaks. Send the pressure with all taps shut.
site-set-up-next-water-hydrant = next: water from the hydrant. Hook up, open slowly, let air out, look for leaks. Send the pressure with all taps shut.
site-set-up-next-power-off = next: no power until it is cleared. Go on only when an electrician says so.
site-set-up-next-heater-later = next: get the volts right. Then tank and bay heater on, and read their amps.
site-set-up-next-fill = next: no water at this site. Fill the fresh tank, up to { $fresh_gal }. Then pump on, and look for leaks.
site-set-up-next-fill-no-power = next: no water and no power here. Fill the fresh tank, up to { $fresh_gal }. Read the battery. It feeds lights and pumps.
site-set-up-next-pressure = next: read the water pressure with all taps shut. { $least } to { $limit } is good. Send the number.
site-set-up-next-heater = next: tank and bay heater on, circuit { $circuit }. Read its amps.
site-set-up-next-test = next: flush each stall, try each tap and lock. Water heater on once its tank is full. Then photos.
site-set-up-next-photos = next: photos of each room, the hook-ups, the steps and the ground under it. Then text that it is in service.

## Towing

tow-waste-aboard = Stop. Waste tank at { $level }. Do not tow. Pump it out first.
tow-waste-aboard-unknown = Stop. Nobody said that the waste tank is empty. Read it. Pump it out before you tow.
tow-waste-aboard-ordered = Waste tank at { $level }. On their order it moves as it is: walking pace, level ground, only as far as they say. Pump it out before it goes on.
tow-waste-aboard-ordered-unknown = Nobody said that the waste tank is empty. On their order it moves as it is: walking pace, level ground, only as far as they say. Read it there, and pump it out before it goes on.
tow-fresh-aboard = Fresh tank at { $level }. Drain it before you tow.
tow-fresh-aboard-unknown = Nobody said that the fresh tank is empty. Read it. Drain it before you tow.
tow-not-ready = Not reported yet: { $missing }. Do it, or text that it is done. Then jacks up, chocks out last, test lights and breakaway.
tow-not-ready-left = It left with these not reported: { $missing }. Pull over where it is safe and check. Test lights and breakaway.
tow-not-ready-rolling = Not told yet: { $missing }. Done: text so. Else stop where it is safe and check. Test lights and breakaway.
tow-not-ready-roll = Before you roll: still not reported: { $missing }. It is not ready to tow. Already on the road: pull over where it is safe and check. Test lights and breakaway.
tow-not-ready-held = Do not roll yet: the list below is not done. Already on the road: pull over where it is safe and check. Test lights and breakaway.
tow-not-ready-gear = Do not tow it: { $gear }. On the road: pull over where it is safe. Mend it, test it, then text that it is fixed.
tow-overweight-ordered = Too heavy to tow: { $gross }, limit { $gvwr }. That is { $over } over. On their order: only as far as they say. Empty both tanks before it goes on.
tow-overweight = Too heavy to tow: { $gross }, limit { $gvwr }. That is { $over } over. Empty both tanks first.

## Crew

crew-late-check-in = No word for { $silent }. Send a check-in: tank, pressure, power.
crew-late-check-in-cold = No word for { $silent } at { $air }. Check it: heater amps, water moving, tank, pressure.
crew-person-hurt = Call the emergency number. Say where you are and what happened. Stay with them. Do not move them unless they are in danger.
crew-person-hurt-at = Call the emergency number. Say you are at { $address }, and what happened. Stay with them. Do not move them unless they are in danger.

## Troubles: the first steps

trouble-burnt-smell = A burnt smell can be a fire that nobody sees yet. Everybody out and away. Call the emergency number. Power off at the source if you can reach it safely. Do not go back in.
trouble-burnt-smell-at = A burnt smell can be a fire that nobody sees yet. Everybody out and away. Call the emergency number. Say you are at { $address }. Power off at the source if you can reach it safely. Do not go back in.
trouble-co-alarm = Everybody out, upwind, into fresh air. Call the emergency number. Generator off if you can do it safely. Nobody goes back in. An alarm that stops is no all-clear.
trouble-co-alarm-at = Everybody out, upwind, into fresh air. Call the emergency number. Say you are at { $address }. Generator off if you can do it safely. Nobody goes back in. An alarm that stops is no all-clear.
trouble-fire = Everybody out and away. Call the emergency number. Power off at the source if you can reach it safely. Do not go back in.
trouble-fire-at = Everybody out and away. Call the emergency number. Say you are at { $address }. Power off at the source if you can reach it safely. Do not go back in.
trouble-fire-road = Pull over, clear of people, brush and buildings. Everybody out, away from the traffic. Call the emergency number. Unhitch only if you can do it safely, and chock it first. Do not go back to it.
trouble-burnt-smell-road = Pull over, clear of people, brush and buildings. A burnt smell can be a fire that nobody sees yet. Everybody out, away from the traffic. Call the emergency number. Do not go back to it.
trouble-runaway = Get everybody out of its path and off the slope. Do not try to hold or stop it. On a road, near people or wires: call the emergency number. Once it is still: chock it, cut its power at the source. Nobody goes in.
trouble-runaway-at = Get everybody out of its path and off the slope. Do not try to hold or stop it. On a road, near people or wires: call the emergency number. Say you are at { $address }. Once it is still: chock it, cut its power at the source. Nobody goes in.
trouble-gas-illness = Everybody out, upwind, into fresh air. Call the emergency number. Generator off if you can do it safely. Nobody goes back in.
trouble-gas-illness-at = Everybody out, upwind, into fresh air. Call the emergency number. Say you are at { $address }. Generator off if you can do it safely. Nobody goes back in.
trouble-person-trapped = Speak to them. No answer: call the emergency number. Try the coin slot on the lock. Then the hinge pins.
trouble-person-trapped-at = Speak to them. No answer: call the emergency number. Say you are at { $address }. Try the coin slot on the lock. Then the hinge pins.
trouble-hot-plug = Stop using that plug. Power off at the source, then unplug it. Do not use it again. Replace plug and outlet.
trouble-cord-damaged = Power off at the source. Take that cord away and use a good one. Keep it out of water and away from tires.
trouble-low-flow = Weak water. Most often a dirty inlet filter, a kink, or a tire on the hose. One tap only: clean its screen.
trouble-no-water = Most often the spigot or the trailer valve is shut, or the selector is wrong. Else there is no pressure, or no 12 V for the pump.
trouble-no-water-tank = Running from the tank. Most often it is empty, or the pump switch is off. Then the pump fuse: one of the same rating, once.
trouble-no-water-freezing = It freezes: the hose may be blocked with ice. Read the pressure at the trailer. Shut the supply and open the nearest tap. Thaw the hose with warm air from the open end.
trouble-no-lights = One room dark: motion switch, then that room's 12 V fuse. Replace it once, same rating. Both rooms dark: battery switch, then the converter's circuit.
trouble-fuse-blown = Replace it once, same rating. Blows again: leave it out, there is a short.
trouble-no-power = Most often the site breaker is off, or a cord end is loose. Reset a tripped GFCI once. Others on site dark too: call the site.
trouble-no-power-leave-off = Leave the power off. Reset nothing. An electrician looks at it first.
trouble-breaker-trip = Turn loads off. Reset it once: fully off, then on. Trips at once: leave it off. Trips later: too much load.
trouble-breaker-trip-leave-off = Leave that breaker off. Do not reset it. An electrician looks at it first.
trouble-gfci-trip-leave-off = Leave that GFCI off. Do not reset it. An electrician looks at it first.
trouble-gfci-trip = Unplug all from it, then reset. Holds: plug back one at a time. The last one is the fault. Look for a wet plug, with power off.
trouble-pump-running = Fresh tank empty: pump off, it burns when dry. Else a toilet or tap runs, or there is a leak under the trailer. Close stalls one by one.
trouble-pump-dead = Lights dead too: battery switch and converter circuit. Lights work: pump switch, then the pump fuse, once, same rating. See that the fresh tank has water.
trouble-no-heat = Most often the circuit is dead, or the selector is on AC: the two never run together. Then thermostat and filter. Low volts give little heat.
trouble-no-heat-freezing = It freezes. Decide on draining first: hose, then pump and heater lines, then tanks. Then check that room's circuit, the selector and the thermostat. Read the amps.
trouble-no-cooling = Fan dead: circuit or thermostat. It hums and stops: AC off, read the volts, check the cord. Wait 5 min before you start it again.
trouble-no-hot-water = Most often it had too little time, or its circuit is off. Not sure that its tank is full: heater off.
trouble-leak = Foul water: treat it as a spill. Water near power: power off first. Shut the supply and the pump. Stops: pressure side. Goes on: tank or drain.
trouble-frozen = Power off at wet parts. Shut the supply, open the nearest tap. Warm air from the open end back. Then fill slowly and look for splits.
trouble-toilet-clog = All toilets: waste tank full or main line. Close the unit. One: close that stall. Gloves and eye shield, plunger, then auger.
trouble-sink-clog = Gloves on. Clear the drain screen and the trap. Plunger next. All sinks slow: read the waste tank.
trouble-toilet-running = Flush twice to clear the seal. Still runs: close its stop valve. A stuck valve can empty the fresh tank in an hour and fill the waste tank.
trouble-odor-left-alone = Leave the smell alone for now: no drains, no fan, nobody goes in.
trouble-odor = Pour a quart of water in each drain. Vent fan on, vent cap clear. Read the waste tank. Then check valve and cap.
trouble-odor-gas = Gas or fuel smell: everybody out, into fresh air, upwind. No flame, no smoking. Touch no switch, plug or breaker. Call the emergency number from outside. Shut the bottle or the engine only if you can reach it safely. Nobody goes back in until they say so.
trouble-odor-gas-at = Gas or fuel smell: everybody out, into fresh air, upwind. No flame, no smoking. Touch no switch, plug or breaker. Call the emergency number from outside. Say you are at { $address }. Shut the bottle or the engine only if you can reach it safely. Nobody goes back in until they say so.
trouble-fan-dead = Do the lights in that room work? Check the fan's fuse. Replace it once, same rating.
trouble-lock-jam = Speak first: somebody may be inside. Then try the coin slot, then the hinge pins.
trouble-no-sound = Is its power on, and the volume up? Check plug and fuse. It can wait.
trouble-out-of-supplies = Restock: paper, soap, towels. None on the truck: who brings it, and when?
trouble-damage = Make it safe first. Keep people off, tape it off. Send photos. Do not tow it until someone has looked at it.
trouble-tire = Do not tow on it. On the road: pull over where it is safe. Chock before you jack. Change it, and check the others.

## Said again, in a line

again-fire = Everybody still out and away? Nobody goes back in. Emergency number called?
again-gas-illness = Still out, in fresh air? Nobody goes back in. Emergency number called?
again-gas-smell = Still out? Nobody back in until it is aired and cleared. No flame, no switch. Call from outside.
again-shock = Power still off at the source? Nobody touches metal, steps or water. Never reset it to try.
again-person-hurt = Emergency number called? Stay with them. Do not move them unless they are in danger.
again-person-trapped = Keep speaking to them. No answer: call the emergency number.
again-runaway = Everybody out of its path. Do not try to hold it. Hurt: call the emergency number. Once it is still: chock both sides, then text "chocked".
again-not-chocked = Both sides chocked now? Nobody unhitches, stands behind it or goes under before.
again-unsafe = As said: make that safe first. Keep people off, and leave it off.
again-spill = Unit closed, people off, drains blocked? Gloves, boots and eye shield. Nothing into a drain.
again-hot-plug = Still off at the source? Do not use that plug again. It can start a fire.
again-cord-damaged = Still off at the source? Do not use or tape that cord.
again-waste-aboard = Do not tow yet. Empty the waste tank first, and say so.

## Cautions, one for each hazard

caution-burst-hose = Stand clear when you open the water. A burst hose or fitting whips.
caution-bleed-first = Shut the spigot and bleed the pressure at a sink before you open anything.
caution-keep-regulator = Do not take the regulator off to gain pressure. Never bypass it above 80 psi (5.5 bar).
caution-backflow = Keep the vacuum breaker on the spigot. Never leave a hose end lying in liquid.
caution-hydrant-permission = Use a hydrant only if the water utility lets you. Use its meter and its backflow device.
caution-not-drinking = Use a drinking-water hose, kept capped, never the waste hose. Label tank water "not for drinking".
caution-kill-power-at-source = Cut the power at the source, with dry hands. Stay clear of metal and water. Wet skin lets a current through that can kill.
caution-electrician = Local code and a licensed electrician decide before it is switched on again.
caution-plumber = In a wall or main line, local code and a licensed plumber decide.
caution-open-neutral = One leg can reach 200 V. Do not plug in or switch on anything until an electrician has cleared it.
caution-hot-plug = A hot or brown plug can start a fire. Stop using it.
caution-no-bypass = Never bypass a GFCI. No cheater plug. Never cut off the ground pin.
caution-same-fuse = Never a larger fuse, foil or wire. A second blow means a short: leave it out.
caution-compressor-low-volts = Low volts burn a compressor. Keep it off until the volts are good.
caution-carbon-monoxide = Exhaust kills without a smell. Generator 20 ft (6 m) or more from doors, windows and vents. Never indoors, in a tent or under the trailer. Headache, dizzy or sick: everybody out, emergency call.
caution-generator-handling = Refuel with the engine off and cool. Leave its ground as the maker built it. No adapter that joins two outlets.
caution-battery-gas = A charging battery gives off gas that explodes. No sparks or flame. Rings off. Disconnect before you use a wrench.
caution-battery-freeze = A flat battery freezes and can split. Charge it or bring it in.
caution-no-flame = Never thaw with a flame. No heat gun on plastic or near waste gas. Warm air or warm towels, tap open first.
caution-heat-tape = Heat tape only if listed for that hose, on a GFCI. Do not let it overlap unless it is made for that. Local code decides.
caution-heater-dry = Water heater power off before you drain it, and until its tank is full. A dry element burns out.
caution-antifreeze = Only pink antifreeze (propylene glycol). Never car antifreeze in any line or in the waste tank. It is toxic. Blow out at 40 to 50 psi (3 bar) at most.
caution-ice-split = Ice may have split a pipe. Fill slowly and watch for 10 min.
caution-ice-plug = Ice in the waste outlet: do not pull the cap. It lets go all at once. Outlet frozen and the tank over half: close the unit.
caution-frostbite = Skin white or numb: go in and warm it slowly. Do not rub it. Nobody works alone.
caution-heat-stroke = Confused or collapsed in the heat: emergency call, and cool them at once.
caution-sewage-hygiene = Gloves, boots and eye shield. No bare skin. Do not eat or drink. Wash after.
caution-sewage-discharge = Sewage in a storm drain or stream must be reported, often at once. State rules decide. Log time, gallons, cause and who was told.
caution-bleach = Never mix bleach with acid or ammonia, and urine has ammonia. Let air in.
caution-tank-gas = Tank gas can kill, and strong gas stops your sense of smell. Rotten-egg smell or a headache: people out, upwind. No smoking, no flame.
caution-no-entry = Never put your head into a tank. Never go in after someone who fell down. Call rescue.
caution-tow-empty = Never tow with liquid aboard. It sways, and it can overload axles and brakes. With waste aboard, the dispatcher decides on a move on site, or fire and police do. Then walking pace, level ground, never a public road.
caution-roll-away = It can roll. Chock both sides before you unhitch. Stand out of its path.
caution-under-load = Never under a trailer that only a jack holds. Somebody caught under it: do not lift or move it. Rescue does that.
caution-first-aid = Heavy bleeding: press hard. Eyes splashed: rinse with clean water for 15 min. No breath: start pushing on the chest.
caution-stabilizers = Stabilizers steady it. They do not lift it. Put wide pads under them on soft ground.
caution-scald = Hot water scalds. A relief valve that blows: power off, stand clear, call a licensed plumber.
caution-slip = Wet or icy ground: put sand and a cone.
caution-no-fuel-heater = No fuel heater inside. It can burn the place down and its gas kills.
caution-roof-fall = Stay off the roof in wind or wet. Power off before you open a cover.
caution-pump-dry = A pump that runs dry burns. Switch it off when the tank is empty.
caution-overhead = Look up and around before you back in: wires, branches, septic lid, sprinklers, soft edge. Use a spotter.
caution-emergency-call = Hurt, burnt, dizzy or no answer: call the emergency number. Stay on the line.
caution-local-code = Local code and a licensed electrician decide. This is advice.
caution-night-pressure = Night pressure can be higher than day pressure.
caution-pressure-code = Over 80 psi (5.5 bar) a regulator is code, not a choice. Local code and a licensed plumber decide.
caution-air-gap = Keep the hose end above the tank's inlet: a gap of twice its width, at least 1 in (25 mm).
caution-fire-electric = No water on a fire near power. Fight a small one only with a way out behind you.
caution-fuel-gas = One spark can light gas or fuel vapor. Local code and a licensed gas fitter decide before it is used again.
caution-cord-no-tape = Do not tape or mend a cord. Replace it. Keep cords out of water and away from tires.
caution-two-resets = Two resets at most. Then leave it off.
caution-leak-near-power = Water near power: cut the power first, then touch.
caution-drain-cleaner = No acid or lye: it splashes, and it makes gas with bleach. No pressure washer up the line.
caution-breakaway = Test brakes and breakaway at each hitch. Chains crossed, pins clipped, every lamp lit.
caution-road-law = Brakes, breakaway, chains and lamps are law on the road. Federal and state rules decide what may roll.

## Formulas, in words

formula-reading-over-limit = the reading against the limit: over it
formula-reading-under-limit = the reading against the limit: under it
formula-reported = somebody on site reported it
formula-unexplained-loss = expected = static less what hose, fittings and climb take at that flow; unexplained = expected less the reading
formula-fall = the reading before less the reading now
formula-hose-flow = the flow that leaves 20 psi after hose and fittings; against what toilets and taps take in 99 of 100 moments of the peak
formula-fresh-hours = gallons left ÷ (uses an hour × gallons a use)
formula-book-pump-out = time to book = (stop level less level) ÷ rise an hour, less the hauler's notice, less an hour in hand
formula-gauge = the gauge against what came in since, by the guests
formula-freeze = how long standing water takes from 50 °F (10 °C) to freezing through hose wall and air; blocked at a quarter of the way to solid ice
formula-heater-hold = heat lost through the tank's skin at this cold and wind, with the tank half full
formula-heater-dead = heater reported on, yet its circuit draws nothing
formula-no-package = no cold package; the air against the limit
formula-wind-chill = wind chill from air and wind; it acts on skin, not on tanks
formula-heat-index = heat index from air and humidity
formula-shock = a tingle means the ground is lost; wet skin at 120 V passes enough current to kill
formula-open-neutral = on a lost neutral two legs share 240 V by their loads: one runs high, the other low
formula-continuous = a load of three hours or more may take 80 % of the breaker
formula-shared-circuit = the circuit's reading against 80 % of its breaker
formula-volts-fall = (volts without load less volts under load) ÷ volts without load
formula-cord-drop = volts lost = 2 × length × amps × ohms a foot; as a share of 120 V
formula-services = one circuit for each AC and one for the water heater; one more for the cold package at 40 °F (4 °C) or less
formula-battery-hours = hours to half charge at the load that this many uses make (Peukert)
formula-charge = charge from the volts at rest: 12.65 full, 12.24 half, 11.89 flat
formula-generator = (all running watts + the largest extra to start) ÷ what height and heat leave of the rating
formula-queue = busy share = people an hour in the peak × time a use ÷ stalls
formula-slope = how far off level, against the limit
formula-set-up = the order of setting up, less what was reported done
formula-tow-empty = more than 5 % aboard, or nobody said since the last guest
formula-tow-gear = a fault of what it is towed, held or seen by, not reported fixed
formula-leaving = the order of leaving, less what was reported done
formula-gross-weight = empty weight + gallons aboard × 8.34 lb, against the rating
formula-silence = hours since the last word, against the limit

## Names of the facts

fact-name = name
fact-near = nearest
fact-value = number
fact-what = tank
fact-order = order
fact-pressure = pressure
fact-limit = limit
fact-regulator = regulator set to
fact-code-limit = code limit
fact-needed = needed at the trailer
fact-static = pressure with taps shut
fact-hose = hose length
fact-bore = hose inside
fact-flow = flow
fact-expected = expected
fact-unexplained = unexplained loss
fact-before = before
fact-fall = fall
fact-fall-limit = fall that counts
fact-given = flow the hose gives
fact-wanted = flow wanted at the peak
fact-fresh = fresh tank
fact-fresh-warn = fresh, warn at
fact-fresh-act = fresh, act at
fact-uses = uses an hour
fact-per-use = water a use
fact-fresh-hours = fresh water lasts
fact-fresh-at = fresh low at
fact-level = level
fact-stop-level = stop level
fact-lead = hauler's notice
fact-in-hand = kept in hand
fact-here = called now, the truck is on site
fact-rate = rise while open
fact-book-in = time left to book
fact-p10 = one chance in ten before
fact-p50 = as likely before as after
fact-p90 = nine chances in ten before
fact-unit-level = whole unit closes at
fact-after-pump-out = most a gauge should show after a pump-out
fact-pumped-at = pumped out at
fact-air = outside air
fact-air-at = air last read
fact-off = power off for
fact-air-from = air taken from
fact-low = forecast low
fact-wind = wind
fact-freezing = freezing
fact-water = water starts at
fact-hose-min = hose at freezing in
fact-block-min = hose may block in
fact-tank-hours = fresh tank at freezing in
fact-circuit = circuit
fact-amps = current
fact-heater = tank heater
fact-heater-needed = heat needed
fact-chill = wind chill
fact-humidity = humidity
fact-heat-index = heat index
fact-volts = volts
fact-high = high leg
fact-low-leg = low leg
fact-breaker = breaker
fact-continuous = for hours, at most
fact-since = since
fact-until = until
fact-together = its loads together
fact-cord = cord length
fact-gauge = cord gauge
fact-lost = volts lost
fact-drop = loss
fact-volts-expected = volts left
fact-drop-limit = loss worth a note
fact-cord-amps = cord rating
fact-cords = cords
fact-cords-needed = circuits needed
fact-feed = circuits to feed
fact-left-out = will not run
fact-circuits = circuits
fact-converter-circuit = converter's circuit
fact-battery-ah = battery
fact-charge = charge
fact-load = load
fact-battery-hours = battery lasts
fact-generator-w = generator
fact-running-w = running
fact-needed-w = rating needed
fact-altitude = height above sea
fact-guests = guests here
fact-peak = peak over mean
fact-use-time = time a use
fact-stalls = stalls
fact-stalls-out = stalls out
fact-busy = busy share
fact-busy-limit = busy share limit
fact-wait = mean wait
fact-slope = off level
fact-next = next step
fact-then = after that
fact-least = least pressure
fact-fresh-gal = fresh tank holds
fact-missing = not reported
fact-gear = not fit for the road
fact-empty = empty weight
fact-liquid = liquid aboard
fact-gvwr = weight rating
fact-gross = weight as it stands
fact-over = over by
fact-last-word = last word
fact-silent = silent for
fact-silence-limit = late from
fact-address = emergency address

## Words that facts hold

value-level = level
value-chock = chock
value-unhitch = unhitch
value-jacks = jacks
value-power = power
value-volts = volts
value-regulator = regulator
value-water = water
value-fill = fill
value-pressure = pressure
value-heater = heater
value-test = test
value-closed = closed
value-water-off = water off
value-heater-off = heater off
value-power-off = power off
value-stowed = stowed
value-jacks-up = jacks up
value-lights-checked = lights checked

### Guided checks

## Frame

walk-step = { $unit }, { $name }, step { $count }: { $what }
walk-answer-word = Yes, no or skip.
walk-answer-number = Send the number, or skip.
walk-answer-safe = Yes or no.
walk-mended-now = { $what }: { $words }
walk-not = So it is not { $what }.
walk-read-then = Read { $age } ago: { $what }.
walk-paused = That was asked { $age } ago. So I ask again before it counts.
walk-left-safe = Then leave it off and shut, and keep people away. Somebody must look at it first.
walk-none = No check is open. Send the unit and what is wrong: 12 no lights.
course-flicker = lights flicker
walk-lately = Done { $age } ago, so not asked again: { $what }.
walk-repaired = Lately on { $unit }: { $what }.
walk-repaired-then = { $what } { $age } ago
walk-was-mended = { $name } mended
walk-fixed = Good. That ends the check on { $unit }: { $name }.
walk-tank-empty = The tank of { $unit } is empty: nothing comes from there. Selector on tank: put it on site water. No water at the spigot either: fill the tank, pump off until then.
walk-fixed-danger = That ends the check on { $unit }: { $name }. But this danger stands there: { $what }. It is not over by that. Everybody stays off until whoever may clear it did.
walk-reset = Reset noted. If it trips again, tell me.
walk-skipped = Taken as done up to here.
walk-no-more = That was the last check.
walk-left-off = { $unit }: leave it off. That it holds now is no proof. A licensed electrician looks at it first.
walk-reset-again = { $unit }: no more resets. Switch it off, unplug what is on it, and leave it off. A licensed electrician looks at it first.
walk-two-resets = That makes two resets. No third one.
walk-reset-once = Reset once is enough. It tripped again, so it stays off.
walk-calls-electrician = { $unit }: stop here. Local code and a licensed electrician go on from here.
walk-calls-plumber = { $unit }: stop here. Local code and a licensed plumber go on from here.
walk-calls-repair = { $unit }: stop here. It needs a repair.
walk-emergency-at = Say you are at { $site }.
walk-unread = I could not read that as an answer.
walk-waits = Still open for { $unit }: { $name }, step { $count }. "back" to go on.
walk-back = Back to { $unit }: { $name }.
trouble-trips-again = It was reset twice and trips again. Leave it off. Unplug what is on it.
walk-dropped = Check on { $unit } dropped: { $name }. The report stands.
walk-taken-over = You have the check on { $unit } now: { $name }.
walk-handed-over = { $who } goes on with the check on { $unit }: { $name }.
walk-why = This step shows whether it is { $what }.
walk-tripped = Trip noted. Leave it off until the next step says so.
walk-not-there = You are not at the trailer. Ask who is there. Send what they say, in words.
walk-culprit = So { $what } is at fault. Leave it off. Do not plug it back in. { $unit }: local code and a licensed electrician go on from here.
walk-culprit-note = { $what } stays off, it trips. Electrician first
walk-culprit-stays-off = { $unit }: { $what } stays off, it was found to trip its circuit. Without it, drain what can freeze.
load-ac = the AC
load-converter = the converter
load-heat-tape = the heat tape
load-heater = the heater
load-lights = the lighting circuit
load-pump = the pump
load-water-heater = the water heater

## Cards, notes, overrides, orders

card-gate = Gate code: { $what }
card-contact = Ask for: { $what }
card-stand = Stand: { $what }
card-septic-lid = Septic lid: { $what }
card-notes = Site: { $what }
card-none = { $unit }: the office wrote nothing down about its site. Ask the dispatcher.
card-address = Address for the emergency line: { $what }
card-call = Somebody in danger: the emergency number first.
card-dispatcher = All else: { $who }, dispatcher.
card-silent = The card of { $site } does not say. Ask the dispatcher.
chocks-sure = Are both sides chocked now? Then text "chocked".
round-then = Then, on { $unit }: { $what }
card-no-job = { $unit } has no job now, so I have no card for it. Ask the dispatcher.
left-anyway = { $signal } { $unit }: { $who } leaves with this still open: { $what }. Phone them: stop where it is safe.
card-not-today = The gate code comes on the day of the job. Ask the dispatcher if you need it now.
card-not-crew = The gate code is for the crew of this job. Ask the dispatcher.
note-stands = Note on { $unit } ({ $who }, { $time }): { $quote }
note-none = No notes on { $unit }.
note-cleared = Notes on { $unit } cleared.
note-how = Send "note", the unit and your words: note 14 tap the gauge. "note 14 clear" drops them.
override-cautions = The cautions still hold. Walking pace, level ground, no public road.
override-stands = Override on { $unit } by { $who }, { $time }: { $quote }. The cautions still hold.
override-ordered = Order of fire or police on { $unit }, told by { $who }, { $time }: { $quote }.
order-obey = Obey fire and police. Tell me which unit, so that it is logged.
order-obey-unit = Obey fire and police. Their order on { $unit } is logged. People first. If it moves: walking pace, chains on, and stop at the first safe place.
order-first = Obey the order first. The advice here holds as soon as they let you.
order-told = { $unit }: order of fire or police, told by { $who }: { $quote }. Obey it, and phone { $who }.
order-lifted = The order of fire or police on { $unit } is taken off: { $quote }. It no longer stands.
order-lifted-told = { $unit }: { $who } says fire or police lifted their order: { $quote }.
order-stands = An order of fire or police stands on { $unit }: { $quote }. Shut it again, unless they lifted it. Then send "order on { $unit } lifted".
order-stands-told = { $unit } was opened by { $who } against an order of fire or police: { $quote }. Phone them.

## Setting up and leaving

set-up-answer = Answer "done", the number, or "skip".
set-up-open-now = All set on { $unit }. Send "{ $unit } in service" when guests may come in.
set-up-not-skipped = This one keeps people safe. It cannot be skipped.
round-dropped = Steps on { $unit } dropped. The reports stand.
round-undone = So the steps on { $unit } are dropped too.
leave-step = { $unit }, leaving, { $count } to go: { $what }
leave-open = Still to do on { $unit } before it leaves: { $what }.
leave-held = Departure of { $unit } not logged. Already on the road: text "{ $unit } on the road". Only a dispatcher can let it go as it is.
leave-closed = Is it closed to guests?
leave-waste = Is the waste tank pumped out? Send the level.
leave-fresh = Is the fresh tank drained? Send the level.
leave-water-off = Is the water off, the hose drained and put away?
leave-heater-off = Are all heaters off?
leave-power-off = Is the power off, cords put away?
leave-stowed = Is all stowed: steps, ramps, awnings, doors locked?
leave-jacks-up = Hitched, chains crossed, jacks up?
leave-chocks = Chocks out, as the last thing on the ground?
leave-lights-checked = Do all the tow lights work?
leave-breakaway = Breakaway: battery good, pin pulled, brakes hold?
leave-breakaway-fault = The breakaway was reported bad. Is it mended and tested since?
leave-brake-fault = The trailer brakes were reported bad. Are they mended and tested since?
leave-coupler-fault = The coupler or its pin was reported bad. Is it mended, latched and pinned?
leave-chain-fault = The chains were reported bad. Are both on, crossed and clipped now?
leave-tow-lights-fault = A tow light was reported out. Do all of them work now?
leave-jack-fault = A jack was reported stuck. Is it free and up now?
leave-tire = A tire was reported bad. Is it changed, and the others checked?
leave-do-it = Do it first. It is not ready to tow.
leave-which-tank = Some left in which tank? Send it as in "{ $unit } waste 1/4" or "{ $unit } fresh 1/4". Not ready to tow with either.
leave-hauled = Waste empty on { $unit }: taken as pumped out. Who hauled it, and how many gallons? Send it as "{ $unit } pumped 380 gal".
leave-by-word = Not told yet of { $unit }: { $what }. Done: text so. Else stop where it is safe and see to it.
leave-truck = The pump truck for { $unit } is still booked: task { $id }. Cancel it? Then send "drop { $id }" with the reason, or tell them where to go.
leave-ready = { $unit } is ready to tow, by what you told me. Re-check lug nuts after 50 miles (80 km).
leave-not-ready = { $unit } is not ready to tow. Still open: { $what }.
value-waste = waste tank
value-fresh = fresh tank
value-chocks = chocks
value-breakaway = breakaway
confirmed-chocks = Noted on { $unit }: chocks taken out.
confirmed-breakaway = Noted on { $unit }: breakaway tested.
value-coupler-fault = coupler or pin trouble
value-chain-fault = safety chain trouble
value-brake-fault = trailer brake trouble
value-breakaway-fault = breakaway trouble
value-tow-lights-fault = tow light out
value-jack-fault = jack stuck
value-tire = tire trouble

## Plugging in

plug-volts = Expect about { $value } at the trailer under load ({ $what }).
plug-volts-low = You read { $read }, with { $value } to expect ({ $what }). Feel each plug for heat with power off. Then tell the site.
plug-volts-good = You read { $read }, with about { $value } to expect under load ({ $what }).
plug-generator = A generator for these circuits: { $value } or more ({ $what }).
plug-taken = { $value } taken
plug-water-from = The card of { $site } says it has no water. Where does it come from? Send "note { $unit }" and your words.

## Steps

step-power-off-source = Is the power off at the source: site breakers off, or cords pulled there?
step-person-hurt = Is anyone hurt, burnt, dizzy or thrown?
step-unit-closed = Is the unit closed, with people kept off, and does the site know?
step-other-room = Are the lights in the other room fine?
step-motion-switch = Try the motion sensor, the switch and the timer. Light now?
step-one-lamp = Is it one lamp only, black, broken or loose in its socket?
step-mains-flicker = Do lights or loads on 120 V flicker or surge too?
step-ground-screw = Battery switch off first. Tighten the ground screw and the terminals, then on. Steady now?
step-lamp-socket = Lights off. Clean the lamp's socket, seat the lamp, lights on. Steady now?
step-room-fuse = Replace that 12 V fuse once, same rating. Does it work now?
step-fuse-again = Did the new fuse blow too?
step-connector = Check the connector and the ground screw. Light now?
step-others-dark = Are others on the site dark too?
step-site-breaker = Is the site breaker on?
step-cord-seated = Is each cord fully in, plug by plug?
step-site-gfci = Reset a tripped site GFCI once. Power back?
step-outlet-volts = Read the volts at the outlet.
step-battery-switch = Is the battery switch on?
step-battery-volts = Read the battery volts at rest.
step-main-fuse = Is the main 12 V fuse at the battery whole?
step-converter-circuit = Is the converter's circuit live? Read the volts at its outlet if you can.
step-converter-hum = Does the converter hum, and are its fuses whole?
step-terminals = Disconnect first. Clean and tighten the battery terminals, no sparks. Does it work now?
step-unplug-all = Unplug all from it and reset it once. Does it hold?
step-wet-plug = With power off: is a plug wet, or lying on the ground?
step-two-cords-one-gfci = Are two cords on one GFCI?
step-plug-back = Plug the circuits back one at a time. Does one of them trip it?
step-holds-now = Reset it once more, no more than that. Does it hold?
step-trips-at-once = Loads off. Reset it once: fully off, then on. Does it trip at once?
step-add-amps = Add up the amps on it.
step-on-start = Does it trip when an AC starts?
step-after-hours = Does it trip after some hours?
step-shared-breaker = Does only the site breaker trip, with others on it?
step-supply-open = Are the spigot and the trailer's valve open?
step-static-pressure = Shut all taps and read the pressure at the trailer.
step-water-selector = Is the selector right: site water with a hose, tank without?
step-fresh-level = How full is the fresh tank?
step-lights-work = Do the 12 V lights work?
step-pump-fuse = Pump switch on? Then replace the pump fuse once, same rating. Does it work now?
step-pump-runs-no-flow = Does the pump run, and still no water?
step-inlet-filter = Shut the spigot and bleed it. Clean the inlet filter. Good flow now?
step-hose-kink = Look along the hose: a kink, a crushed part, a car on it?
step-hose-size = Is the hose thinner than 3/4 in, or over 100 ft (30 m)?
step-regulator-setting = Is the regulator at 40 to 50 psi (3 bar), its screen clean?
step-one-fixture = Is only one tap weak?
step-second-pump = Do both pumps run?
step-fresh-empty = Is the fresh tank empty?
step-running-fixture = Listen at each stall and sink. Is one running?
step-leak-under = Look under the trailer and in the bay. Is there a leak?
step-tank-rising = On site water: is the fresh tank filling by itself?
step-pump-cycles = All taps shut: does the pump still start by itself?
step-suction-air = Are the joints before the pump tight, with no air in them?
step-heater-full = Does the hot tap give water with no air? Not sure: heater power off.
step-how-long = Has it been full and powered for over an hour?
step-heater-circuit = Is the water heater's circuit live, its breaker on?
step-heater-switch = Is the heater switch on?
step-high-limit = Power off, let it cool, press the high-limit button once. Hot water later?
step-heater-amps = Read the heater's amps.
step-bypass-valves = Are the bypass valves set to summer, not winter?
step-clean-water = Is it clean water, not foul?
step-leak-power = Is all power near the water off?
step-shut-supply = Shut the supply and the pump. Does the leak stop?
step-washer = Hose washer, then fittings hand-tight. Has it stopped?
step-frozen-last-night = Did it freeze last night?
step-power-off-wet = Is the power off at every wet part?
step-outlet-clear = Is the waste outlet free of ice?
step-open-tap = Is the supply shut, and the nearest tap open?
step-warm-air = Warm air or towels from the open end back, 30 to 60 min. Is it thawed?
step-splits = Fill slowly and watch for 10 min. Is there a split or a drip?
step-flows-again = Does the water run again?
step-circuit-live = Is that room's circuit live?
step-selector = Is the selector on heat, with the AC off?
step-thermostat = Is the thermostat set right, its batteries good?
step-heat-filter = Clear the filter and the grille. Let it cool, then reset once. Heat now?
step-volts = Read the volts at the trailer.
step-doors-shut = Are the doors kept shut?
step-heat-amps = Read the amps on that circuit, heat on.
step-fan-runs = Does the fan run?
step-compressor-hums = Does the compressor hum, then stop or trip?
step-cooling-filter = Clean the filter. Coil iced: fan only until it is clear. Cold now?
step-two-ac = Are two ACs on one cord?
step-air-difference = How many °F is the air that comes out colder than the air that goes in?
step-strong-smell = Is it strong, did it go away at once, or does a head ache?
step-trap = Pour a quart (1 l) of water in each drain. Better now?
step-vent-fan = Is the vent fan on, and the vent cap clear?
step-waste-level = How full is the waste tank?
step-flapper = Does each toilet hold its water?
step-valve-cap = Is the waste valve dry, its cap on?
step-deodorizer = Dose the tank with deodorizer. Better now?
step-one-toilet = Is it just one toilet?
step-plunger = Gloves and eye shield on. Plunger, then closet auger. Clear now?
step-pyramid = Fill it with water, let it soak, rod it gently. Clear now?
step-flush-twice = Flush twice to clear the seal. Has it stopped?
step-clean-seal = Clean the valve seal. Has it stopped?
step-close-stop = Close that toilet's stop valve and its stall. Has it stopped?
step-anyone-inside = Speak through the door. Is anyone inside?
step-they-answer = Speak to them. Do they answer?
step-coin-slot = Try a coin in the slot of the lock. Open now?
step-hinge-pins = Take out the hinge pins. Open now?
step-spill-source = Is the source stopped: valve shut, cap on?
step-spill-drain = Are storm drains and water blocked off?
step-spill-gear = Gloves, boots and eye shield on?
step-spill-up = Is it held in with soil or absorbent, and sucked up?
step-spill-clean = Disinfect the hard ground and wash. Log gallons, cause and photos. All clean?
step-tap-tank = Tap the tank wall by the probe. Does the gauge read right now?
step-look-light = Look down a toilet with a light. How full is it?
step-rinse-probe = At the next pump-out, rinse the probe. Does it read right then?
step-slope = How many % is it off level?
step-blocks = Chocks in, then blocks under the low side. Level now?
step-move = Move it to flatter ground, chock it again. Level now?

## What a step rules out

cause-dead-12v = the battery or the converter
cause-light-switch = the switch
cause-dead-lamp = one lamp
cause-loose-neutral = a loose neutral
cause-low-battery = a low battery
cause-loose-ground = a loose ground
cause-bad-socket = a bad socket
cause-room-fuse = the fuse
cause-short = a short
cause-connector = the connector
cause-wide-outage = an outage on the whole site
cause-dead-breaker = the site breaker
cause-loose-cord = a loose cord
cause-tripped-gfci = the site GFCI
cause-dead-outlet = the outlet
cause-battery-switch = the battery switch
cause-flat-battery = a flat battery
cause-main-fuse = the main fuse
cause-unfed-converter = a converter without power
cause-dead-converter = the converter
cause-terminals = the terminals
cause-bad-gfci = the GFCI itself
cause-wet-plug = a wet plug
cause-two-cords = two cords on one GFCI
cause-faulty-circuit = one bad circuit
cause-overload = too much load
cause-starved-compressor = a starved compressor
cause-long-load = a load that runs for hours
cause-shared-breaker = a shared breaker
cause-second-trip = a chance trip
cause-closed-supply = a closed supply
cause-dead-supply = a dead supply
cause-weak-supply = a weak supply
cause-wrong-mode = the selector
cause-empty-tank = an empty tank
cause-pump-fuse = the pump fuse
cause-air-lock = air in the pump
cause-blocked-inlet = the inlet filter
cause-kink = a kink
cause-thin-hose = a thin or long hose
cause-regulator = the regulator
cause-aerator = one tap's screen
cause-second-pump = the second pump
cause-dry-run = a dry pump
cause-running-fixture = a fixture left running
cause-leak = a leak you can see
cause-check-valve = the check valve
cause-small-leak = a small leak
cause-suction = air on the suction side
cause-not-yet-hot = too short a time
cause-dead-circuit = a dead circuit
cause-heater-switch = the switch
cause-high-limit = the high limit
cause-element = the element
cause-bypass = the bypass valves
cause-drain-side = the tank or drain side
cause-over-pressure = too much pressure
cause-washer = a washer or loose fitting
cause-split = a split pipe
cause-ice-plug = an ice plug
cause-still-frozen = all of the ice
cause-selector = the selector
cause-thermostat = the thermostat
cause-blocked-grille = the filter or grille
cause-low-volts = low volts
cause-open-doors = open doors
cause-no-amps = the heater itself
cause-iced-coil = the filter or ice
cause-two-ac = two ACs on one cord
cause-refrigerant = the refrigerant
cause-dry-trap = a dry drain
cause-vent = the vent
cause-full-tank = a full tank
cause-flapper = a toilet seal
cause-cap = the valve or cap
cause-dose = the dose alone
cause-main-line = the main line
cause-one-toilet = a plain clog
cause-pyramid = a pile under the toilet
cause-debris = dirt in the seal
cause-seal = the seal
cause-stop-valve = the stop valve
cause-lock = the lock alone
cause-door = the hinges
cause-foul-ground = clean yet
cause-stuck-probe = a probe stuck for now
cause-high-waste = a full tank
cause-coated-probe = dirt on the probe
cause-slope = a slope that matters
cause-low-side = a low side
cause-bad-pad = the ground

## What was done, and the question whether it helped

did-aerator = That tap's screen clean
did-air-lock = Air out and strainer clean
did-bad-pad = Moved and chocked again
did-bad-socket = Socket clean, lamp seated
did-battery-switch = Battery switch on
did-blocked-grille = Filter and grille clear, reset once
did-blocked-inlet = Inlet filter clean
did-bypass = Bypass valves set
did-cap = Valve shut, cap on, washed off
did-closed-supply = Supply fully open
did-coated-probe = Probe rinsed
did-connector = Connector and ground tight
did-dead-breaker = Site breaker switched on
did-dead-circuit = Circuit fed
did-dead-supply = Hose walked, supply open
did-dead-lamp = Lamp changed, socket clean
did-debris = Flushed twice
did-door = Hinge pins out
did-dose = Tank dosed
did-dry-run = Pump off, tank filled
did-dry-trap = Water in each drain
did-empty-tank = Tank filled
did-flapper = Toilet seal clean, or stall closed
did-flat-battery = Loads off and charging
did-foul-ground = Ground washed and disinfected
did-full-tank = Tank pumped out
did-heater-switch = Heater switch on
did-high-limit = High-limit button pressed once
did-high-waste = Tank pumped out
did-ice-plug = Outlet warmed slowly
did-iced-coil = Filter clean, coil clear
did-kink = Hose straight and free
did-light-switch = Sensor, switch and timer tried
did-lock = Lock turned by its slot
did-long-load = Load shed, panel cool
did-loose-cord = Cords seated, breaker on
did-loose-ground = Ground and terminals tight
did-low-battery = Loads off and charging
did-low-side = Blocks under the low side
did-low-volts = Load shed, better cord
did-main-fuse = Main fuse replaced once
did-not-yet-hot = An hour full and powered
did-one-toilet = Plunger and auger used
did-open-doors = Doors shut for half an hour
did-over-pressure = Pressure set to 45 psi (3 bar)
did-overload = Load taken off
did-pump-fuse = Pump switch on, fuse replaced once
did-pyramid = Soaked and rodded
did-regulator = Regulator set, screen rinsed
did-room-fuse = Room fuse replaced once
did-running-fixture = Its stop valve shut, or its seal clean
did-seal = Valve seal clean
did-second-pump = Fuse and pressure switch checked
did-second-trip = Reset the last time
did-selector = AC off, heat selected
did-shared-breaker = An outlet of its own
did-slope = Blocks under the low side
did-starved-compressor = 5 min off, better cord
did-still-frozen = Thawed and filled slowly
did-stuck-probe = Tank wall tapped
did-suction = Joints tight, air out
did-terminals = Terminals clean and tight
did-thermostat = Thermostat set, new batteries
did-thin-hose = Wider, shorter hose
did-tripped-gfci = Site GFCI reset once
did-two-ac = One AC off
did-two-cords = One cord on each GFCI
did-unfed-converter = Converter's circuit fed
did-vent = Vent fan on, cap clear
did-washer = Washer and fittings tight
did-weak-supply = Spigot fully open, regulator set
did-wet-plug = Plug dry and off the ground, reset once
did-wrong-mode = Selector set

mended-battery-low = do the 12 V lights work now?
mended-breaker-trip = does the breaker hold now?
mended-frozen = does the water run now?
mended-fuse-blown = does it work now?
mended-gauge-stuck = does the gauge read right now?
mended-gfci-trip = does the GFCI hold now?
mended-leak = has the leak stopped?
mended-lock-jam = is the door open now?
mended-low-flow = is the flow good now?
mended-no-cooling = does it cool now?
mended-no-heat = is there heat now?
mended-no-hot-water = is there hot water now?
mended-no-lights = is there light now?
mended-no-power = is the power back?
mended-no-water = is there water now?
mended-not-level = is it level now?
mended-odor = is the smell gone?
mended-person-trapped = is the door open now?
mended-pump-dead = does the pump run now?
mended-pump-running = has the pump stopped?
mended-shock = is it safe now?
mended-spill = is all clean now?
mended-toilet-clog = is it clear now?
mended-toilet-running = has it stopped?

## What a step finds

settles-live-metal = All metal may be live. Cut the power at the source now, with dry hands. Nobody touches metal, steps or water.
settles-people-near = Close the unit and put up a barrier. Tell the site. Nobody goes near it.
settles-dead-12v = So the 12 V side is dead. Battery and converter are next.
settles-dead-lamp = Lights off. Put in a lamp of the same kind. Green or wet socket: clean and dry it first.
settles-loose-neutral = Then the neutral may be loose, and one leg can run far too high. All breakers off now, and leave them off. Nobody switches anything on.
settles-low-battery = Too low for steady lights. Loads off, feed the converter's circuit, let it charge.
settles-short = There is a short. Leave it off, and leave the fuse out.
settles-wide-outage = Then it is the site's outage. Tell the site and ask for a time. Lights and pumps live on the battery until then.
settles-dead-breaker = Ask the site to switch it on: fully off, then on. Once.
settles-loose-cord = Breaker off, seat the plugs, breaker on. A hot or brown plug: stop using it.
settles-dead-outlet = The outlet is wrong. Do not use it.
settles-battery-switch = Switch it on.
settles-flat-battery = It is flat. First take its loads off: pumps, lights and fans. Then feed the converter's circuit, battery switch on, and let it charge.
settles-main-fuse = Replace it once, same rating. Blows again: leave it out, there is a short.
settles-unfed-converter = Feed that circuit: move a cord to it, or its breaker on.
settles-dead-converter = The converter is dead. A battery put on the wrong way round blows its fuses.
settles-bad-gfci = It trips with nothing on it, so the GFCI or the supply is bad. Leave it off.
settles-wet-plug = Power off. Dry it, lift it off the ground, cover it from rain.
settles-two-cords = Give each cord a GFCI of its own.
settles-faulty-circuit = That circuit is the fault. Leave it off. Often it is the heater element, then an AC.
settles-overload = Too much load. Turn some off: AC or heat first, then the water heater.
settles-starved-compressor = It is short of volts. AC off, wait 5 min. Use a shorter or thicker cord.
settles-long-load = It carries too much for hours. Shed load, and let the panel cool.
settles-shared-breaker = Ask the site who else is on it. Get an outlet of your own.
settles-closed-supply = Open it all the way, slowly. Stand clear of the hose.
settles-dead-supply = No pressure: the supply is shut, kinked or frozen. Walk the hose back to the spigot.
settles-weak-supply = The supply is weak. Spigot fully open, regulator at its setting. Else run on tank and pump.
settles-wrong-mode = Set it: site water with a hose, tank and pump without.
settles-empty-tank = The tank is empty. Pump off until it is filled.
settles-air-lock = Air lock or a blocked strainer. Open the farthest tap, bleed the air, clean the strainer.
settles-kink = Straighten it, and move what stands on it.
settles-thin-hose = Use 3/4 or 1 in hose, as short as you can.
settles-regulator = Set it to 40 to 50 psi (3 bar) and rinse its screen. Never take it off above 80 psi (5.5 bar).
settles-aerator = Clean that tap's screen.
settles-second-pump = Check its fuse, once, same rating. Then its pressure switch.
settles-dry-run = Pump off now: it burns when dry. Fill the tank first.
settles-running-fixture = Close that stall's stop valve. Then flush twice and clean its seal.
settles-leak = Then the leak is the matter.
settles-check-valve = Site water leaks back into the tank. Shut the site water before it runs over.
settles-small-leak = There is a small leak somewhere. Pump off when nobody needs it.
settles-suction = Tighten them by hand, then bleed the air.
settles-dry-heater = Heater power off now: a dry element burns out. Fill it until the hot tap gives no air.
settles-not-yet-hot = Give it time: 6 gal (23 l) takes over half an hour, 10 gal (38 l) over an hour.
settles-dead-circuit = Feed it: breaker fully off, then on, once. Check its cord.
settles-heater-switch = Switch it on, with its tank full.
settles-element = Far too little current: element, thermostat or limit is out, or you read another circuit. Leave it off.
settles-bypass = Set them so that water goes through the heater.
settles-wet-power = Cut the power there first, at the source. Then touch.
settles-drain-side = It is on the tank or drain side. Close what drains into it.
settles-over-pressure = Too much pressure. Shut the tap, fit or set the regulator to 45 psi (3 bar).
settles-split = A pipe has split. Keep the water shut. Put sand and a cone where it is wet.
settles-ice-plug = Do not pull the cap: it lets go all at once. Waste over half: close the unit. Warm it slowly.
settles-shut-tap = Do that first: shut the supply, open the nearest tap. Steam and water need a way out.
settles-not-thawed = Keep on, from the open end back. No flame, no heat gun.
settles-selector = Turn the AC off, then select heat. The two never run together.
settles-thermostat = Set it above the room, new batteries.
settles-low-volts = Low volts give weak heat. Shed load, use a shorter or thicker cord.
settles-open-doors = Shut them, and give it half an hour.
settles-no-amps = Power is there, yet it draws far too little. An element or the thermostat is out, or you read another circuit. Leave it off.
settles-two-ac = One of them off. Each AC needs a cord of its own.
settles-refrigerant = Too small a difference: refrigerant or coil. That is for the shop.
settles-vent = Fan on, clear the cap. Stay off the roof in wind or wet.
settles-full-tank = It needs a pump-out.
settles-flapper = Clean that seal, or close the stall.
settles-cap = Gloves on. Close the valve, put the cap on, wash the drip off.
settles-main-line = All of them: tank full, main line or vent. Close the unit.
settles-stop-valve = It does not close. Shut the water, or run on the pump only when needed.
settles-no-answer = Call the emergency number now. Keep speaking to them.
settles-open-source = Stop that first. People and pets off, upwind.
settles-open-drain = Block them first. Sewage in a drain or stream must be reported: tell your dispatcher.
settles-bare-skin = Put them on first. No bare skin, no eating, no drinking.
settles-left-waste = Hold it in with soil or absorbent. Get the pump truck. Bag the solids.
settles-high-waste = It is high. Call the pump truck, whatever the gauge says.
settles-slope = That is too much. Doors swing, and gauge and drain go wrong.

### What the bot says by itself

speak-was-due = This was due at { $time }, { $age } ago.
speak-answer-task = Answer "take { $id }", or "got it" to stop this for all.
speak-call-truck = Call the truck: task { $task }
speak-task = To do: task { $task }
speak-errand = To do now: task { $task } Send "done { $id }" when it is done.
speak-silent-unit = { $who } last wrote at { $time }. No report on this one since { $since }.
speak-silent-person = No word from { $who } at all since { $time }. Phone them.
speak-unheard = { $unit }, { $site }: doors open since { $time }, and nobody wrote of it on this job.
speak-unheard-since = { $unit }, { $site }: doors open since { $time }, and nobody called it open. Last word { $since }.
speak-unheard-ask = Phone { $names }: is it open, and how full is it?
speak-unheard-who = Phone the site: is it open, and how full is it?
speak-unanswered = { $signal }: nobody answered yet. { $what }, told at { $time }. Phone them now.
speak-alone-unanswered = { $signal }: nobody answered yet. { $who } works alone; alarm since { $time }. Phone them now. No answer: send somebody, call emergency.
speak-alone-found-yet = { $signal }: is { $who } found? The alarm stands since { $time }. Found: send "{ $who } is ok". Else send somebody, call emergency.
speak-overdue = { $who } was due there at { $time } and did not write. Phone them.
speak-overdue-unit = { $unit }: { $who } was due there at { $time } and did not write. Phone them.
speak-alone-ask = OK? Answer "ok" by { $time }. If not, I alarm { $names }.
speak-alone-delayed = { $who } works alone and I was down: { $words }. I ask now. Phone them too.
speak-alone-alarm = { $signal }: { $who } works alone since { $time } and does not answer. They said { $words }. Place: { $site }. Phone them now. No answer: send somebody, call emergency.
speak-alone-alarm-for = { $signal }: { $who } works alone and does not answer. Clock set by { $by } at { $time }: { $words }. Place: { $site }. Phone them now. No answer: send somebody, call emergency.
alone-whom-dispatcher = the dispatcher
alone-whom-nobody = nobody: there is no one else. Tell somebody by phone first
alone-whom = { $names }
alone-for = { $who } is asked at { $time }. No answer by { $last }, and I alarm { $names }. "{ $who } is ok" stops it.
alone-for-told = { $who } wants to know you are well. I ask you at { $time }. "ok" stops it.
alone-for-how = No clock is set for { $who }. Send for instance: check on { $who } in 15.
speak-alone-nowhere = not told
speak-alone-last-place = not told; last word { $age } ago, of { $site }
speak-read-tank = { $unit }: please look at the waste tank now. Your answer decides when to call the truck. Send it like "{ $unit } tank 3/4".
speak-patrol = { $count ->
    [one] One long stay to look at today:
   *[other] { $count } long stays to look at today:
}
answer-patrol-rest = And { $count } more. All of them come with the morning list.
speak-patrol-row = { $unit } { $site }: no word for { $age }, waste about { $value }.
speak-patrol-row-full = { $unit } { $site }: no word for { $age }, waste about { $value }, stop level maybe { $time }.
road-noted = Noted: on the road, there about { $time }. What can wait waits until you write from there, or { $last }.
speak-held-from = Told at { $time }, held until now:
speak-held = { $who } is on the road. They get it when they are there.
speak-alone-set = Alone on { $unit }: I ask you at { $time }. No answer by { $last }, and I alarm { $names }. "ok" stops it.
speak-alone-set-until = Alone on { $unit }: I ask you at { $time }. No answer by { $last }, and I alarm { $names }.
speak-alone-until = It runs until { $time }. "stop" ends it sooner, "ok" does not.
speak-alone-every-until = It asks every { $count } min until { $time }. "stop" ends it sooner, "ok" does not.
speak-alone-every = It asks every { $count } min. "stop" ends it, "ok" does not.
speak-alone-set-nowhere = I ask you at { $time }. No answer by { $last }, and I alarm { $names }. Which unit are you at?
alone-company = This clock is yours alone: I do not watch { $who }.
speak-alone-cold = Feels like { $value }: skin can freeze in { $count } min. I made it shorter.
speak-alone-again = Good. I ask you again at { $time }. "ok" stops it.
speak-alone-again-until = Good. I still ask you at { $time }. "stop" ends it.
speak-alone-moved = Your clock: I ask you next at { $time }.
alone-works-till = working alone till { $time }
speak-alone-over = Good. The clock is off.
speak-alone-unsure = All well? Then send "ok". I passed your words to { $names }. In trouble? Write "help", or call the emergency number.
speak-alone-words = { $who } works alone, was asked, and wrote { $quote }. I do not know if that means well. Phone them now.
speak-alone-found = { $who } answered: { $words }. The alarm is over.
speak-alone-offer = Alone there? Text "going under { $unit }, check me in 15". I ask, and alarm the dispatcher if you do not answer.
speak-alone-how = No clock is set yet. Text "alone at { $unit }, check me in 30". I ask then, and alarm the dispatcher if you do not answer.
speak-alone-how-nowhere = No clock is set yet. Text your unit and "check me in 30". I ask then, and alarm the dispatcher if you do not answer.
alone-runs = { $who } works alone since { $time }: { $words }. I ask at { $due }.
alone-no-answer = { $who } works alone since { $time } and does not answer: { $words }. Phone them now. No answer: send somebody, call emergency.
alone-nobody = No clock of a lone worker runs. I know only of those who asked for one.
alone-reached = Good. The clock of { $who } is off.
alone-reached-by = { $by } says { $who } was reached. The clock is off.
alone-goes = Noted: you go to { $who }. Found? Then send "{ $who } is ok". No sign: call emergency. I ask again in 10 min.
alone-goes-by = { $by } is on the way to { $who }.
speak-low = { $count ->
    [one] Low { $value } tonight. One unit at risk:
   *[other] Low { $value } tonight. { $count } units at risk:
}
speak-low-changed = { $count ->
    [one] Low { $value } tonight, changed from { $was }. One unit at risk:
   *[other] Low { $value } tonight, changed from { $was }. { $count } units at risk:
}
speak-low-again = { $count ->
    [one] Low { $value } tonight, as told before. One unit at risk:
   *[other] Low { $value } tonight, as told before. { $count } units at risk:
}
speak-air = { $count ->
    [one] Air { $value } now. One unit at risk:
   *[other] Air { $value } now. { $count } units at risk:
}
speak-air-again = { $count ->
    [one] Air { $value } now, much as before. One unit at risk:
   *[other] Air { $value } now, much as before. { $count } units at risk:
}
speak-air-mild = Air { $value } now. That tells nothing of the night. Send "low tonight 12F", or paste a TAF.
speak-air-low-holds = Air { $read } now. The low of { $value } holds for tonight.
speak-air-nobody = Air { $value } noted. No unit stands at a job where it could freeze.
speak-low-site = { $site }: { $what }
speak-low-row = { $units }: { $what }.
low-here = { $unit }: a low of { $value } is due here tonight.
speak-low-do = Before dark: heaters on and read their amps, hose heated, moving or drained. Text each unit when it is done.
speak-low-do-now = Do it now: heaters on and read their amps, hose heated, moving or drained. Text each unit when it is done.
speak-low-was = Changed from { $was }.
speak-report-old = That report was made at { $time }: too long ago to tell of the air now. Nothing is noted. Paste a new one.
wind-to-come = Not logged: that wind is still to come. Stow awnings and mats before it does. Send the wind when it blows, as in "12 wind 40".
speak-forecast-over = That forecast says nothing of the night to come: its low was at { $time }. Nothing is noted. Paste a new one.
speak-low-other-day = { $value } is for another day. I keep the low of tonight alone, and nothing changed. Tell me that day: "low tonight ...".
speak-low-rise = A low of { $value }? { $unit } read { $was } at { $time }. Nothing is noted. Send it again with sign and measure, as in "low tonight 12F" or "low tonight -12C".
speak-low-warm = A low of { $value }? { $unit } read { $was } at { $time }. Nothing is noted. Send it with its measure, as in "low tonight 40F" or "low tonight -40F".
speak-low-odd = A low of { $value }? Nothing is noted. Send it again with its measure, as in "low tonight 12F" or "low tonight -12C".
speak-low-colder-holds = Low { $value } noted. The low of { $was } told before holds too: go by that one.
speak-low-eased = Tonight's low is { $value } now, changed from { $was }. By what was told, your units stay clear of frost. Look all the same.
speak-low-mild = Low { $value } noted. No unit at risk.
speak-low-nobody = Low { $value } noted. No unit stands at a job where it could freeze.
speak-heard-of = Noted: somebody is at { $unit }. Send tank, pressure and power when you can.
digest-unread = Nobody has read the waste, and it may be full: { $names }. Have it read.
digest-unheard = Doors open, and no word at all: { $names }. Ask the crew.
digest-unheard-row = not known
digest-fills = Fills first: { $names }.
digest-fills-maybe = maybe { $time }
digest-fills-now = now
digest-late = Late: { $names }.
digest-late-one = { $task } ({ $age })
digest-call-late-one = { $unit } (if called now, there about { $time } at the soonest: be ready to close stalls)
digest-silent = Silent: { $names }.
ahead-none = { $word }: no jobs.
ahead-none-until = { $word } to { $what }: no jobs.
ahead-none-of = { $word }: no job for { $unit }.
ahead-none-of-until = { $word } to { $what }: no job for { $unit }.
ahead-head = { $count ->
    [one] { $word }: one job.
   *[other] { $word }: { $count } jobs.
}
ahead-job = { $site }: { $units }, { $first } to { $last }, { $value } guests.
ahead-truck = By the guests alone, stop level about: { $names }.
ahead-no-truck = By the guests alone no tank fills up.
ahead-stands-truck = As it stands now, stop level about: { $names }.
ahead-stands-no-truck = As it stands now no tank fills up.
speak-taken-by = { $who } has it: { $what }. No need to do anything.
speak-taken-uncalled = { $who } has it: { $what }. Nobody has called a truck yet. See that it is called.
speak-untaken = { $who } took that back. Nobody has it now: { $task }
speak-low-safe = Nothing told that could freeze: { $names }. Look all the same.
speak-low-untold = Nobody is there whom I could tell: { $names }. Send somebody, or phone the site.
watch-set-any = I will tell you when { $names } reaches { $what }.
watch-set-any-below = I will tell you when { $names } is down to { $what }.
watch-no-reminder = Nothing is set. I remind you with a time: "remind me at 18:00 to check 12". A task has its time: "move 41 19:30". A truck: "truck for 12 at 19:00".
watch-no-condition = Not taken: { $quote }. I act on no condition of this kind. I can watch a reading: if 12 hits 3/4 call me.
holder-had-it = { $who } had it, and hears that.
holder-done = { $who } says it is done: { $task }. Nothing is left for you to do.
holder-dropped = { $who } dropped your task { $task }: { $quote }.
holder-not-needed = { $who } made your task needless: { $task }. Nothing is left for you to do.
holder-reopened = { $who } took that back. Your task is open again: { $task }
holder-truck-off = { $who } says the truck is not coming. Your task: { $task }
holder-truck = { $who } changed the truck. Your task: { $task }
holder-moved = { $who } gave your task another time: { $task }
assign-moved = { $who } has this task now: { $task }. It is no longer yours.
speak-report-unread = I read no temperature in that report. Send the low: low tonight 12F.
truck-done = How many gallons did the truck take from { $unit }? A number will do. Not pumped yet? Send "undo".
truck-gallons = Gallons, or a trailer? Send the gallons of { $unit } with "gal", as in "380 gal". Nothing is logged yet.
truck-done-stays = No gallons noted. The pump-out of { $unit } stays done. Still full? Send "undo".
done-unpumped-told = { $who } says it is done: { $task }. No gallons told yet.
undo-fact = What was told of an incident stays as it was told. Send what is right, with "incident", the unit and your words.
override-cautions-short = The cautions still hold.
override-leaves = Not set aside by this: { $names }.
answer-no-override = No override is in force.
answer-has-read = I cannot see whether { $who } has read it. An answer is the only sign.
answer-has-no-task = { $who } has no open tasks.
tell-what = What shall I tell { $who }? Nothing passed on yet. Send "tell", the name and your words together.
tell-unit-nobody = I know nobody at { $unit } now. Nothing passed on. Send "tell", a name and your words.
digest-call = Call a pump truck now: { $names }.
digest-call-by = Call before the night: { $names }. I wake nobody for it.
digest-call-by-one = { $unit } (by { $time })
digest-truck-late = Truck after the tank may be full: { $names }.
digest-truck-missing = Truck has not come: { $names }. Phone the hauler, or call another one.
digest-truck-missing-one = { $unit } (promised { $time })
digest-truck-late-one = { $unit } (truck { $time }, full maybe { $due })
answer-nobody-has-any = Nobody has any of the open tasks.
answer-all-well = Nothing is wrong on any unit, by what was reported.
answer-urgent-rest = Left out here, with something open too: { $units }. "digest" shows all.
answer-well-until = { $unit } still needs this: { $names }. Nothing is wrong right now.
alone-for-whom = No clock is set. Name one person: check on tobin in 15.

### What is asked about a step while it waits

thing-converter = The converter makes 12 V from site power. It is a box with a fan that hums, by the battery or the panel. Its circuit number is on the panel's list.
thing-tripped = A tripped breaker stands in the middle or off, and feels loose. Reset: fully off first, then on. Goes back at once: that is tripping.
thing-gfci = A GFCI is an outlet or breaker with TEST and RESET on it. Tripped: RESET stands out, or its lamp is off or red. Reset: press it in once, dry hands.
thing-breaker = The breakers are behind the door of the panel, each with its number. The site's breaker is on the post or board where the cord is plugged in. Open doors only, no cover that is screwed on.
thing-fuse = The 12 V fuses are flat colored blades in a strip by the battery or panel. Blown: the wire inside is broken or black. Same number back in, once.
thing-battery-switch = The battery switch is a red or black knob or key near the battery. ON, or the mark in line with the cable, is on.
thing-volts = Use a plug-in meter in an outlet of the trailer, or its own display. Site power reads 108 to 127 V, the battery 12 to 14 V. No meter: "skip". Never probe inside a panel.
thing-amps = The amps are on the panel's display, or on a clamp meter around one wire. No meter: add up the labels, or "skip". Never open a panel for it.
thing-selector = The selector is a switch or lever that says which one is used: site water or tank, heat or cool. It is in the bay by the pump, or at the thermostat.
thing-supply = The spigot is where the hose begins. The trailer's valve is at its inlet, where the hose screws in. Lever along the pipe is open, across it is shut.
thing-static = All taps shut, then read the gauge at the trailer's inlet, or at the regulator. No gauge: "skip".
thing-filter = The inlet filter is a small screen where the hose screws in. The heater or AC filter is behind its grille. Water off and bled, or power off, before you take it out.
thing-tank-level = The lamps or gauge are on the monitor panel: press the button of that tank. A fraction or percent will do. No gauge: a light down the toilet, or "skip".
thing-bypass = The bypass valves are two or three small levers on the pipes behind the water heater. Along the pipe is open. Summer: the heater's two open, the one between them shut.
thing-high-limit = The high-limit button is small and red, under the water heater's cover. Power off at the breaker, let it cool, then press it once.
thing-motion-sensor = The motion sensor is a white dome or eye on the ceiling or by the door. Its timer or switch is beside it, or at the panel.
thing-ground-screw = The connector is where the lamp's two wires join. The ground screw holds the white or bare one to the frame. Battery switch off first.
thing-vent = The vent fan is in the ceiling or the wall of each room. Its cap is on the roof: look up from the ground, do not climb.
thing-flapper = The seal is the rubber ring under the flap at the bottom of the bowl. It is good if water stands in the bowl for a minute.
thing-stop-valve = The stop valve is on the small pipe behind or under that toilet or sink. Turn it right, or across the pipe, to shut it.
thing-slope = Lay a level across the floor. 1 in (2.5 cm) over 8 ft (2.5 m) is 1 %. A level app on a phone shows it, too. Not sure: send how far the bubble is off.
thing-breakaway = The breakaway pin is on a thin cable at the tongue. Pull it: the trailer's brakes must hold against the truck at a walk. Then put it back in.
thing-coin-slot = The slot is in the round plate of the lock, on the outside: turn it with a coin. The hinge pins stand on top of each hinge: push them up from below.
thing-chocks = Chocks go tight against the wheels, in front and behind, on both sides. They go in before it comes off the hook. They come out last, once it is hitched, jacks up.
thing-coupler = The coupler is the socket at the front, on the truck's ball, with a latch and a pin. Chocked first: light plug, breakaway cable and chains off. Pin out, latch open, then raise the tongue jack until the ball is free. Feet and hands out from under.
thing-chains = The two chains cross under the tongue, left to right and right to left. Slack enough to turn, and off the ground. Each hook with its clip. Coupler latched and pinned, jacks all the way up.
thing-jacks = The jacks stand at the marked corners of the frame, on wide pads. Snug, not lifting: the wheels carry it. Hands and feet out from under.
thing-regulator = The regulator is a brass piece, often with a small gauge. It goes on the spigot, before the hose, its arrow with the flow. Its screw sets the pressure. No regulator: do not open the water.
thing-hose = The hose runs from the spigot, regulator first, to the trailer's inlet. To drain it: shut the spigot, open a tap to bleed it, take it off. Lift it from one end to the other, and cap both ends.
thing-fill = The fresh tank fills at the port marked fresh or potable, with a clean drinking hose. It is full when the gauge says so, or water runs out of its vent. Keep the hose end out of the tank.
thing-test = Flush each bowl and see it clear. Run each tap, hot and cold. Lock and unlock each door. Look under for drips. Then the lights and the fan of each room.
thing-photos = One of each room. One of cords and hose where they plug in. One of the steps, and one of the ground. Send them here. No guests in them.
thing-closing = Knock and look in each stall: nobody inside. Then lock both doors with the trailer's key, and put the closed sign out.
thing-dump-valve = The waste outlet is low on one side or at the tail. It is a wide pipe with a cap and a pull valve. Gloves on, valve shut before the cap comes off. The truck's crew hooks up and opens it.
thing-fresh-drain = The fresh drain is a small valve or cap low under the fresh tank. Pump and water heater off first. Open it and a tap, and let it run where it may. Clear water only. It is empty when nothing drips.
thing-heaters = All of them. Room heat at the thermostats, bay and tank heater at their switch or breaker. The water heater at its own. Heat tape unplugged, too.
thing-power-off = AC, heat and water heater off first. Then the trailer's breakers, then the breakers at the post. Then pull the plugs, dry hands, never by the cord. Roll the cords up last.
thing-stowing = Steps fold or slide in and pin, ramps come off and go in their rack, awnings roll in and lock. Doors and hatches locked. Nothing loose inside: bottles, bins, mats.
thing-tow-lights = Running, brake, left and right, hazards. Alone: hazards on, walk around it. For the brakes wedge the pedal with a stick, or back up to a wall and look for red. Plugs clean and tight.
thing-none = I mean just what the step asks. Cannot find it, or cannot tell: "skip". Who knows the trailer can show you.
