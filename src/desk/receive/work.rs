//! The stages of working through a message, in the order in which [`Hearing::work`] takes them.

use super::super::answer::{self, Reply};
use super::super::others::called;
use super::super::phrases::plain;
use super::super::settle::Settled;
use super::super::situate::Case;
use super::super::{
    ahead, aid, alarm, assign, command, hazard, holder, incident, lone, on_road, place, relay,
    silent, standing, truck, walk, watch, withdrawn,
};
use super::meaning::nothing_in;
use super::{Hearing, arrive, danger, ends, hose, in_use, part, power_again, pumped};
use crate::book::Record;
use crate::dialogue::{About, Hauled, Passed};
use crate::heard::{Entry, Event, Fault, Need, Plan, PlanKind, Remark, UnitName};

/// What a message was taken for, beside the entries it holds.
pub(super) struct Taken {
    /// What it says besides.
    said: Said,
    truck_here: Option<UnitName>,
    truck_gone: Option<UnitName>,
    /// Whether it tells of ice underfoot.
    icy: bool,
    /// The trailer whose gas is called gone, and is not.
    gas: Option<UnitName>,
    /// What it says of a danger that is open.
    safety: Option<danger::Safety>,
    /// What it says of the end of one.
    ending: Option<ends::Ending>,
    /// The trailer that it tells to be used or switched beside one.
    in_use: Option<in_use::InUse>,
    /// The trailer of which somebody calls a danger none that they did not report.
    not_theirs: Option<UnitName>,
    /// The dangers without a trailer that it takes back.
    unplaced: Option<Vec<Fault>>,
    /// What it tells that would hurt somebody.
    hazard: Option<hazard::Told>,
    /// What of that it says is over.
    hazard_over: Option<hazard::Over>,
    /// The trailer of which one burnt cord was taken out.
    one_cord: Option<UnitName>,
    /// The trailer whose waste hose came off while nothing ran out.
    hose_off: Option<UnitName>,
    /// The pump-out that it tells of and that did not empty the tank.
    part: Option<part::Part>,
    /// Where it says that a trailer stands, which the plan has elsewhere.
    stands: Option<arrive::Stands>,
    /// The answer to a step of a guided check.
    step: Option<walk::Took>,
    /// The answer to a step of setting up or leaving.
    stood: Option<walk::stand::Stood>,
}

/// What a message says besides reports, as its words tell before it is settled on which trailers.
struct Said {
    /// Pump trucks it tells of.
    coming: Option<truck::Coming>,
    /// The other half of a watch that a question left open, or what of it was not understood.
    other_watch: Option<Result<Plan, String>>,
    /// The trailers and the watch that is to be set on any of them.
    on_any: Option<(Vec<UnitName>, PlanKind)>,
    /// The task that the sender hands back.
    refused: Option<u32>,
    /// What it says of somebody who works alone.
    lone: Option<lone::Lone>,
    /// The trailer that it says is not where it was taken to stand.
    denied: Option<UnitName>,
    /// Whose words the sender takes note of.
    receipt: Option<Passed>,
    /// The trailer and the cords of which it asks how they are hooked up.
    hook_up: Option<(Option<UnitName>, Option<f64>)>,
    /// Who of the crew does not answer.
    silent: Option<String>,
    /// That help is called, and not what for.
    aid: Option<aid::Call>,
    /// The trailer whose level fell and which nobody pumped.
    not_pumped: Option<UnitName>,
}

impl Taken {
    /// Tells whether the message was taken for something that bears on people's safety.
    pub(super) fn bears_on_safety(&self) -> bool {
        self.icy
            || self.gas.is_some()
            || self.safety.is_some()
            || self.ending.is_some()
            || self.in_use.is_some()
            || self.not_theirs.is_some()
            || self.unplaced.is_some()
            || self.hazard.is_some()
            || self.hazard_over.is_some()
            || self.said.lone.is_some()
            || self.said.silent.is_some()
            || self.said.aid.is_some()
            || self.said.receipt.is_some()
    }
}

impl Hearing<'_> {
    /// Settles what the message means: a report, a bare answer, a step of a guided check.
    pub(super) fn take(&mut self) -> (Settled, Taken) {
        let said = self.said();
        let mut settled = self.settle();
        standing::shut_by_order(self, &mut settled);
        self.door_that_was_met(&mut settled);
        self.numbers_of_no_trailer(&settled);
        self.goes_alone(&mut settled);
        if walk::asks_of_a_thing(self).is_some() {
            // "how do i know if its tripped" tells of no trip
            settled = Settled::default();
        }
        let part = self.pumped_in_part(&mut settled);
        self.fixed_where_it_was_wrong(&mut settled);
        let stands = self.stands_at(&mut settled);
        self.comes_out(&mut settled);
        self.ask_who_leaves(&mut settled);
        self.as_it_goes(&mut settled);
        self.pump_stopped(&mut settled);
        let icy = walk::icy::take(self, &mut settled);
        self.not_mended_after_all(&mut settled);
        let not_theirs = withdrawn::not_theirs(self, &mut settled);
        let unplaced = withdrawn::take_unplaced(self, &mut settled);
        let gas = self.gas_stays(&mut settled);
        let safety = self.safety(&mut settled);
        let ending = match safety.is_none() && gas.is_none() {
            true => self.ending(&mut settled),
            false => None,
        };
        let in_use = self.used_beside_a_danger(&settled);
        let one_cord = self.one_cord_out(&mut settled);
        let hose_off = self.hose_off_dry(&mut settled);
        self.drop_what_it_only_asks_to_do(&mut settled);
        let hazard = match safety {
            // that nobody answers there is no second emergency
            Some(danger::Safety::Unanswered(_)) => None,
            _ => hazard::take(self, &mut settled),
        };
        if let Some(told) = &hazard {
            let fills = |kind: &PlanKind| {
                told.forbids_filling()
                    && matches!(
                        kind,
                        PlanKind::Need {
                            need: Need::Refill,
                            ..
                        }
                    )
            };
            self.heard
                .plans
                .retain(|plan| plan.kind != PlanKind::Other && !fills(&plan.kind));
            let heats = |kind: &PlanKind| {
                matches!(
                    kind,
                    PlanKind::Need {
                        need: Need::Heater,
                        ..
                    }
                )
            };
            if told.forbids_heating() {
                self.heard.plans.retain(|plan| !heats(&plan.kind));
            }
            self.heard.set_aside.clear();
            self.heard.unclear.clear();
        }
        let hazard_over = match hazard {
            Some(_) => None,
            None => hazard::over(self, &mut settled),
        };
        if hazard_over.is_some() {
            self.drop_what_is_not_now();
            self.heard.unclear.clear();
        }
        let truck_here = truck::has_come(self, &mut settled);
        let truck_gone = truck::gone(self, &mut settled);
        if truck_here.is_some() || truck_gone.is_some() {
            self.drop_what_is_not_now();
        }
        // one that is there is not asked for
        if truck_here.is_some() {
            let acts =
                |plan: &Plan| matches!(plan.kind, PlanKind::Need { .. } | PlanKind::Booked { .. });
            self.heard.plans.retain(|plan| !acts(plan));
        }
        // "alone until 11" is no answer to a step that asks for a number
        let of_a_clock = said.lone.as_ref().is_some_and(lone::Lone::is_all);
        let (step, stood) = self.take_steps(
            &mut settled,
            safety.as_ref(),
            hazard.as_ref().is_some_and(|told| !told.is_of_a_person())
                || gas.is_some()
                || ending.is_some()
                || in_use.as_ref().is_some_and(in_use::InUse::is_by_words)
                || of_a_clock
                || said.receipt.is_some(),
        );
        let in_use = in_use.or_else(|| self.packed_beside_a_danger(&mut settled));
        self.cured(&mut settled, step.as_ref());
        settled.words = match said.lone {
            // "10 more min" is no word about trailer 10
            Some(lone::Lone::More) => Vec::new(),
            _ => self.words_about(&settled),
        };
        let taken = Taken {
            said,
            truck_here,
            truck_gone,
            icy,
            gas,
            safety,
            ending,
            in_use,
            not_theirs,
            unplaced,
            hazard,
            hazard_over,
            one_cord,
            hose_off,
            part,
            stands,
            step,
            stood,
        };
        (settled, taken)
    }

    /// "Can i put a propane heater inside 12": what is only asked about, and must not be done, is not done. What is told
    /// beside it stands, and so does whoever came to harm.
    fn drop_what_it_only_asks_to_do(&self, settled: &mut Settled) {
        if !answer::asks_leave(self.text) || !answer::is_warned_of(self) {
            return;
        }
        let told = answer::told_beside(self.text).unwrap_or_default();
        let told = self.desk.reader.hear(&told, self.fleet.style.temperature);
        let stands = |entry: &mut Entry| {
            let wrong = |fault: &Fault| told.entries.iter().any(|it| it.faults.contains(fault));
            let done = |event: &Event| told.entries.iter().any(|it| it.events.contains(event));
            entry
                .faults
                .retain(|fault| fault.harms_a_person() || wrong(fault));
            entry.events.retain(done);
        };
        settled.amend_all(|_, entry| stands(entry));
        settled.homeless.iter_mut().for_each(stands);
        settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
    }

    /// Reads what the message says besides reports, and takes that out of what is heard.
    fn said(&mut self) -> Said {
        watch::point_down(self);
        self.unit_of_a_task();
        // jobs, hours and shifts are the fleet's files': that is said, and nothing is waited for
        if answer::of_the_plan(self).is_some() && !self.tells_a_danger() && !self.reports_a_value()
        {
            self.heard = nothing_in(&self.heard);
        }
        let refused = assign::refused(self);
        if refused.is_some() {
            self.talk.passed = None;
        }
        // a danger that is told beside it stands
        if refused.is_some() && !self.tells_a_danger() {
            self.heard = nothing_in(&self.heard);
            self.text = "";
        }
        let reminds = self.heard.entries.is_empty() && watch::reminds(self);
        if reminds {
            self.drop_what_is_not_now();
            self.heard.unclear.clear();
        }
        let coming = (!reminds).then(|| truck::coming(self)).flatten();
        if let Some(coming) = &coming {
            truck::put(&mut self.heard, coming);
        } else {
            truck::put_off(self);
        }
        self.tell_wishes_apart();
        let other_watch = watch::other_half(self);
        if let Some(Ok(plan)) = &other_watch {
            self.heard.plans.push(plan.clone());
        }
        let on_any = watch::on_any(self);
        if on_any.is_some() {
            let watches = |plan: &Plan| matches!(plan.kind, PlanKind::Watch { .. });
            self.heard.plans.retain(|plan| !watches(plan));
            self.heard.set_aside.clear();
            self.heard.unclear.clear();
        }
        let lone = lone::said(self);
        if lone.is_some() && self.heard.entries.iter().all(Entry::is_empty) {
            if lone.as_ref().is_some_and(lone::Lone::is_all) {
                self.heard.ask = None;
            }
            self.heard.unclear.clear();
            self.drop_what_is_not_now();
        }
        if matches!(lone, Some(lone::Lone::More)) {
            self.heard = nothing_in(&self.heard);
        }
        let receipt = match refused {
            None => relay::receipt(self),
            Some(_) => None,
        };
        let denied = self.denies_its_place();
        let not_pumped = self.not_pumped();
        let hook_up = answer::asked_to_hook_up(self);
        let silent = silent::said(self);
        let aid = match silent.is_none() {
            true => aid::said(self),
            false => None,
        };
        if silent.is_some() || aid.is_some() {
            self.heard = nothing_in(&self.heard);
        }
        Said {
            coming,
            other_watch,
            on_any,
            refused,
            lone,
            denied,
            receipt,
            hook_up,
            silent,
            aid,
            not_pumped,
        }
    }

    /// Tells whether the message tells of what can kill, whatever else it says.
    fn tells_a_danger(&self) -> bool {
        let faults = self.heard.entries.iter().flat_map(|entry| &entry.faults);
        let danger = faults.into_iter().any(|f| Fault::DANGERS.contains(f));
        danger || hazard::is_danger_in(self.text)
    }

    /// "Need someone to get ice melt", "put juno on 16 tomorrow": what others are to do is no plan of the sender's.
    fn tell_wishes_apart(&mut self) {
        let phrases = self.desk.phrases;
        if !phrases.opens("wish", "opens", &plain(self.text)) {
            return;
        }
        let is_name = |word: &str| called(self.fleet.crew.values(), word).is_some();
        let of_others = phrases.holds("wish", "somebody", self.text)
            || self.text.split_whitespace().any(is_name);
        let planned = |remark: &&mut Remark| of_others && remark.why == "plan";
        for remark in self.heard.set_aside.iter_mut().filter(planned) {
            remark.why = "wish".into();
        }
    }

    /// Takes "ya salí" of somebody who works alone as coming out from where they were: no trailer leaves.
    fn comes_out(&self, settled: &mut Settled) {
        let clock = self.desk.book.ahead().alone(&self.member.id);
        if clock.is_some() && self.desk.phrases.is("alone", "out", self.text) {
            settled.homeless = None;
            settled.reports.clear();
            settled.from_context = None;
        }
    }

    /// Takes the answers to steps that wait, where the message stands for itself.
    fn take_steps(
        &mut self,
        settled: &mut Settled,
        safety: Option<&danger::Safety>,
        is_else: bool,
    ) -> (Option<walk::Took>, Option<walk::stand::Stood>) {
        let of_its_own = self.instead_of.is_none()
            && self.asks.is_none()
            && self.fact.is_none()
            && !is_else
            && !matches!(safety, Some(danger::Safety::Over(_)))
            && (!self.is_about_another_thing() || walk::stand::is_answered(self, settled));
        if !of_its_own {
            return (None, None);
        }
        let aside = self.hose_off_aside();
        let step = (!aside).then(|| walk::take(self, settled)).flatten();
        let stood = walk::stand::take(self, settled, step.is_some());
        if step.is_none() && stood.is_none() {
            self.one_task_done(settled);
        }
        if safety.is_none() {
            self.leaving(settled);
            self.loads_together(settled);
            self.dead_circuit(settled);
            self.cold_heater_read(settled);
            self.on_its_own_tank(settled);
            self.hose_told(settled);
        }
        (step, stood)
    }

    /// Drops what the message plans or tells of another time, where what it asks says it all.
    pub(in crate::desk) fn drop_what_is_not_now(&mut self) {
        self.heard.plans.clear();
        self.heard.set_aside.clear();
    }

    /// Begins the reply with what is said of the message itself.
    pub(super) fn open<'r>(
        &'r self,
        settled: &Settled,
        taken: &Taken,
        unreadable: Option<&str>,
        records: &mut Vec<Record>,
    ) -> Reply<'r> {
        let mut units = self.units(settled);
        units.extend(self.talk.checks.iter().map(|check| check.unit.clone()));
        units.extend(self.talk.round.iter().map(|round| round.unit.clone()));
        let mut reply = Reply::new(self, self.board(&units));
        reply.late |= self.late();
        if let Some(kind) = unreadable {
            reply.unreadable(kind);
        }
        if taken.icy {
            walk::icy::tell(self, &mut reply);
        }
        if let Some(unit) = &taken.gas {
            reply.say("gas-stays", &[("unit", unit.as_str().into())]);
            walk::list_standing(self, unit, &mut reply);
        }
        if let Some(unit) = &taken.said.not_pumped {
            pumped::tell_not_pumped(self, unit, &mut reply);
        }
        if let Some(part) = &taken.part {
            part::tell(part, &mut reply);
        }
        if let Some(unit) = &taken.hose_off {
            hose::tell(unit, &mut reply);
        }
        if let Some(unit) = &taken.one_cord {
            reply.say("one-cord-out", &[("unit", unit.as_str().into())]);
        }
        if let Some(safety) = &taken.safety {
            danger::tell(self, safety, &mut reply);
        }
        if let Some(ending) = &taken.ending {
            ends::tell(self, ending, &mut reply);
            if let Some(unit) = ending.unit_of_what_stands() {
                walk::list_standing(self, unit, &mut reply);
            }
        }
        danger::tell_aired(settled, &mut reply);
        self.tell_site_without_unit(settled, &mut reply);
        self.tell_other_site(settled, &mut reply);
        if taken.hazard.is_none() {
            hazard::tell_strict(self, settled, &mut reply);
        }
        place::tell(self, &mut reply);
        arrive::keep(
            self,
            taken.stands.as_ref(),
            taken.said.denied.clone(),
            &mut reply,
            records,
        );
        if self.replaced().is_some() {
            self.tell_changes(settled, &mut reply);
        }
        if self.uncorrects {
            let line = reply.voice.word("undone-correction");
            reply.opening.insert(0, line);
            reply.undone = true;
        }
        reply
    }

    /// Does what follows from the message and what it orders: tasks, trucks, watches, alarms, commands.
    pub(super) fn obey(
        &self,
        settled: &Settled,
        cases: &[Case],
        taken: &Taken,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) {
        if let Some(part) = &taken.part {
            part::explains(self, part, reply);
        }
        self.plan(reply, cases, records);
        match (&taken.truck_here, &taken.truck_gone, &taken.said.coming) {
            (Some(unit), ..) => {
                truck::note_here(self, unit, reply);
                reply.asks = Some(how_much(unit, Hauled::Here));
            }
            (_, Some(unit), _) => reply.asks = Some(how_much(unit, Hauled::Gone)),
            (.., Some(truck::Coming::Muddled)) => reply.say("truck-how", &[]),
            _ => truck::told(self, reply, records),
        }
        if self.heard.command.is_none() {
            watch::list(self, reply);
            if let Some(Err(words)) = &taken.said.other_watch {
                let quote = reply.voice.quote(words);
                reply.say("watch-left", &[("quote", quote.into())]);
            }
            if let Some((units, kind)) = &taken.said.on_any {
                watch::set_on_any(self, units, kind, reply, records);
            } else if !watch::drop(self, reply, records)
                && let Some(missed) = watch::missed(self)
            {
                watch::say_missed(self, &missed, reply);
            }
        }
        watch::hits(self, cases, reply, records);
        alarm::end_silence(self, cases, &settled.words, records);
        alarm::end_of_the_tank(self, cases, records);
        if let Some(told) = &taken.hazard {
            hazard::tell(self, told, reply);
        }
        if let Some(over) = &taken.hazard_over {
            hazard::tell_over(self, over, reply, records);
        }
        on_road::without_the_site(self, reply);
        let told = reply.others.len();
        walk::tell_left_anyway(self, cases, reply);
        if reply.others.len() == told {
            arrive::tell_left_early(self, settled, reply);
        }
        withdrawn::mended(self, &settled.reports, reply, records);
        if let Some(faults) = &taken.unplaced {
            withdrawn::tell_unplaced(self, faults, reply, records);
        }
        if let Some(unit) = &taken.not_theirs {
            withdrawn::tell_not_theirs(unit, reply);
        }
        if let Some(told) = &taken.in_use {
            in_use::tell(self, told, reply);
        }
        alarm::raise(self, cases, settled.from_context.as_ref(), reply, records);
        alarm::tell_of_sewage(self, reply, records);
        alarm::tell_of_no_heat(self, cases, reply, records);
        let lessons = cases.iter().filter_map(|case| case.lesson(&self.key));
        records.extend(lessons.map(|lesson| Record::Lesson { lesson }));
        for order in self.heard.command.iter().chain(&self.also_ordered) {
            command::obey(self, order, reply, records);
        }
        for words in &self.left {
            let quote = reply.voice.quote(words);
            reply.say("order-left", &[("quote", quote.into())]);
        }
        if let Some(id) = taken.said.refused {
            assign::hand_back(self, id, reply);
        }
        incident::take(self, reply, records);
    }

    /// Answers what the message asks.
    pub(super) fn answer(
        &self,
        settled: &Settled,
        taken: &Taken,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) {
        // how one person is is answered by their clock
        let of_a_clock = taken.said.lone.as_ref().is_some_and(lone::Lone::is_all);
        let asked = matches!(taken.said.lone, Some(lone::Lone::Asked(_)));
        let of_one = of_a_clock || asked && self.heard.ask.is_none();
        // what is to be done about a hazard answers what was asked of it
        if let Some(asked) = &taken.said.hook_up {
            answer::hook_up(self, asked, reply);
        } else if !of_one && taken.hazard.is_none() {
            self.answer_questions(taken.step.is_some(), settled, reply, records);
        }
        lone::tell(self, taken.said.lone.as_ref(), reply, records);
        if let Some(passed) = &taken.said.receipt {
            relay::acknowledge(self, passed, reply);
        }
        if let Some(who) = &taken.said.silent {
            silent::tell(self, who, reply);
        }
        if let Some(call) = &taken.said.aid {
            aid::tell(self, call, reply, records);
        }
    }

    /// Answers its questions; `took` tells whether it answered a step of a guided check.
    fn answer_questions(
        &self,
        took: bool,
        settled: &Settled,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) {
        if let Some((unit, open)) = self.asks_leave_beside_it() {
            let names: Vec<String> = open.iter().map(|f| reply.voice.fault(*f)).collect();
            let what = reply.voice.all_of(&names);
            let args = [("unit", unit.as_str().into()), ("what", what.into())];
            let line = reply.voice.say("answer-danger-open", &args);
            reply.first.push(line);
            let lines = ends::closing_words(&reply.voice, &unit, &open);
            reply.first.extend(lines);
            return;
        }
        if answer::of_a_site(self, reply) || answer::of_places(self, reply) {
            return;
        }
        if let Some(asked) = self.asks_for_power_again() {
            return power_again::answer(&asked, reply);
        }
        let several = match took {
            true => Vec::new(),
            false => answer::parts(self),
        };
        if !several.is_empty() {
            return answer::several(self, &several, settled, reply, records);
        }
        let asks = !took || answer::is_warned_of(self);
        let answered = asks && answer::question(self, settled, reply);
        if let Some(ask) = self.heard.ask.as_ref().filter(|_| !answered) {
            answer::ask(self, settled, ask, reply, records);
        }
    }

    /// Adds what goes with it: orders of fire or police, the site's card, the next step, what the bot will speak of.
    pub(super) fn go_on(
        &self,
        settled: &Settled,
        cases: &[Case],
        taken: Taken,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) {
        standing::decide_in_words(self, reply, records);
        standing::confirm(self, taken.stood.is_some(), reply);
        standing::ordered(self, settled, reply, records);
        standing::greet(self, cases, reply);
        standing::beside_the_advice(self, cases, reply);
        walk::stand::go_on(self, cases, taken.stood, reply);
        walk::go_on(self, cases, taken.step.as_ref(), reply, records);
        danger::tell_unread(self, settled, reply);
        standing::keep_confirmed(self, reply, records);
        ahead::note(self, settled, cases, reply, records);
        holder::tell(self, reply);
    }

    /// Tells whether the message is plainly no answer to a step: an order of fire or police, a truck, work or an alarm
    /// that is asked for.
    pub(super) fn is_about_another_thing(&self) -> bool {
        let asks_for = |plan: &Plan| {
            matches!(
                plan.kind,
                PlanKind::Need { .. }
                    | PlanKind::Booked { .. }
                    | PlanKind::Watch { .. }
                    | PlanKind::CheckMe { .. }
            )
        };
        self.heard.plans.iter().any(asks_for)
            || self.desk.answers.tells_of_an_order(self.text)
            || truck::is_of_ours(self)
            || self.desk.phrases.holds("override", "says", self.text)
    }
}

fn how_much(unit: &UnitName, after: Hauled) -> About {
    let unit = unit.clone();
    About::HowMuch { unit, after }
}
