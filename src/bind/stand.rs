//! The Stand: view struct to Slint, callbacks to asks.

use std::rc::Rc;

use slint::{ComponentHandle, ModelRc, SharedString, VecModel};

use super::keep::{fixed, int, keep, shared};
use super::{Interface, at, made, place};
use crate::desk::{
    Ask, ChordCard, ChordNames, FollowState, MOST_CAPO, Passed, Room, ShapeView, Simplify,
    StandView, TonightAsk, Verdict,
};
use crate::theory::NoteName;
use crate::words::{Words, chip_name, tempo};

const NAMES: [ChordNames; 3] = [ChordNames::Letters, ChordNames::Numbers, ChordNames::Both];
const SIMPLER: [Simplify; 3] = [Simplify::Written, Simplify::Triads, Simplify::ThreeChords];

/// What is on the screen, so that only changes are told.
#[derive(Default)]
pub(super) struct Stand {
    shown: Option<StandView>,
    models: Option<Models>,
}

struct Models {
    keys: Rc<VecModel<made::KeyChoice>>,
    slots: Rc<VecModel<made::Slot>>,
    ring: Rc<VecModel<made::RingString>>,
    form: Rc<VecModel<made::FormChip>>,
    lines: Rc<VecModel<made::MapLine>>,
    bars: Vec<Rc<VecModel<made::MapBar>>>,
    safe: Rc<VecModel<made::SafePart>>,
}

impl Models {
    fn new(global: &made::Stand<'_>, safe: &made::Safe<'_>) -> Self {
        let models = Self {
            keys: Rc::default(),
            slots: Rc::default(),
            ring: Rc::default(),
            form: Rc::default(),
            lines: Rc::default(),
            bars: Vec::new(),
            safe: Rc::default(),
        };
        safe.set_parts(shared(&models.safe));
        global.set_keys(shared(&models.keys));
        global.set_slots(shared(&models.slots));
        global.set_ring(shared(&models.ring));
        global.set_form(shared(&models.form));
        global.set_map(shared(&models.lines));
        models
    }
}

impl Stand {
    /// Shows everything anew the next time, as after a change of language.
    pub(super) fn forget(&mut self) {
        self.shown = None;
    }

    pub(super) fn show(&mut self, interface: &Interface, view: Option<StandView>) {
        let global = interface.app().global::<made::Stand<'_>>();
        global.set_there(view.is_some());
        let models = self.models.get_or_insert_with(|| {
            let safe = interface.app().global::<made::Safe<'_>>();
            Models::new(&global, &safe)
        });
        let Some(view) = view else {
            self.shown = None;
            return;
        };
        if self.shown.as_ref() == Some(&view) {
            return;
        }
        let words = interface.0.words.borrow();
        let old = self.shown.as_ref();
        show_state(&global, &words, &view);
        let renamed = old.is_none_or(|old| old.names != view.names);
        if renamed || old.is_none_or(|old| old.now != view.now) {
            global.set_now(chord(&words, view.names, &view.now));
            let shapes = view.now.shape.as_ref().map(|shape| shape.of);
            global.set_shapes(words.shape_of(shapes.unwrap_or((0, 0))).into());
        }
        if let Some(next) = &view.next {
            let before = old.and_then(|old| old.next.as_ref());
            if renamed || before.is_none_or(|before| before.chord != next.chord) {
                global.set_next(chord(&words, view.names, &next.chord));
            }
        }
        if old.is_none_or(|old| old.strum != view.strum) {
            keep(&models.slots, view.strum.slots.iter().map(slot).collect());
            global.set_strum_said(words.strum(&view.strum.slots).into());
        }
        if old.is_none_or(|old| old.ring != view.ring) {
            keep(&models.ring, ring(&words, &view));
        }
        if old.is_none_or(|old| old.form != view.form) {
            keep(&models.form, form(&words, &view));
        }
        if old.is_none_or(|old| old.keys != view.keys || old.key != view.key) {
            keep(&models.keys, keys(&view));
        }
        if old.is_none_or(|old| old.map != view.map) {
            show_map(models, &words, &view);
        }
        if renamed || old.is_none_or(|old| old.safe != view.safe) {
            keep(&models.safe, safe(&words, &view));
            let now = view.safe.iter().position(|part| part.now);
            let global = interface.app().global::<made::Safe<'_>>();
            global.set_now(now.map_or(0, int));
        }
        global.set_line(int(view.line));
        drop(words);
        self.shown = Some(view);
    }
}

/// The plain values: Slint itself tells whether they change.
fn show_state(global: &made::Stand<'_>, words: &Words, view: &StandView) {
    global.set_title(view.title.as_str().into());
    global.set_detail(words.place(view, true).into());
    global.set_place(words.place(view, false).into());
    global.set_key(words.key_badge(&view.key, &view.mode).into());
    let written = view.written_key.as_deref();
    global.set_moved(written.is_some());
    global.set_written(
        written
            .map(|key| words.written_in(key))
            .unwrap_or_default()
            .into(),
    );
    global.set_names(place(&NAMES, &view.names));
    global.set_simpler(place(&SIMPLER, &view.simplify));
    global.set_capo(view.capo.into());
    global.set_most_capo(MOST_CAPO.into());
    global.set_tempo(tempo(view.tempo).into());
    global.set_times(int(view.times));
    global.set_times_text(words.times(view.times).into());
    global.set_last_time(view.last_time);
    global.set_state(words.state(view.follow).into());
    let (follow, count) = match view.follow {
        FollowState::Waiting => (made::Follow::Waiting, None),
        FollowState::ByHand => (made::Follow::ByHand, None),
        FollowState::CountIn { beat, .. } => (made::Follow::CountIn, Some(beat)),
        FollowState::ByClock => (made::Follow::ByClock, None),
        FollowState::Held => (made::Follow::Held, None),
        FollowState::Ended => (made::Follow::Ended, None),
    };
    global.set_follow(follow);
    global.set_clock(matches!(
        follow,
        made::Follow::CountIn | made::Follow::ByClock
    ));
    global.set_count(
        count
            .map(|beat| beat.to_string())
            .unwrap_or_default()
            .into(),
    );
    global.set_slot(view.strum.now.map_or(-1, int));
    global.set_has_next(view.next.is_some());
    let next = view.next.as_ref();
    global.set_next_left(
        next.map(|next| words.until(next))
            .unwrap_or_default()
            .into(),
    );
    global.set_next_beats(next.map_or(0, |next| int(next.beats)));
    global.set_next_beats_left(next.map_or(0, |next| int(next.beats_left)));
    let sung = view.sung.as_ref();
    global.set_listed(view.listed);
    let next_tune = view.next_tune.as_ref().map(|next| words.next_tune(next));
    global.set_next_tune(next_tune.unwrap_or_default().into());
    global.set_has_words(sung.is_some());
    global.set_sung(sung.map_or("", |sung| &sung.now).into());
    global.set_sung_then(sung.map_or("", |sung| &sung.then).into());
}

pub(super) fn chord(words: &Words, names: ChordNames, card: &ChordCard) -> made::Chord {
    let said = words.chord(card);
    let (root, rest) = card.pieces();
    made::Chord {
        // Nobody plays here: the sign that charts use, whatever the language.
        root: if card.no_chord { "N.C." } else { root }.into(),
        rest: rest.into(),
        other: match names {
            ChordNames::Letters if !card.other.is_empty() => words.degree(&card.other),
            _ => card.other.clone(),
        }
        .into(),
        both: names == ChordNames::Both,
        played_as: card
            .played_as
            .as_deref()
            .map(|chord| words.played_as(chord))
            .unwrap_or_default()
            .into(),
        no_chord: card.no_chord,
        has_shape: card.shape.is_some(),
        shape: card
            .shape
            .as_ref()
            .map(|shape| self::shape(words, &said, shape))
            .unwrap_or_default(),
        said: said.into(),
    }
}

pub(super) fn shape(words: &Words, chord: &str, view: &ShapeView) -> made::Shape {
    let text = |finger: &u8| match finger {
        0 => SharedString::default(),
        finger => finger.to_string().into(),
    };
    let highest = view.frets.iter().flatten().max().copied().unwrap_or(0);
    made::Shape {
        courses: fixed(view.courses.iter().map(SharedString::from)),
        strings: fixed(view.strings.iter().map(|&count| i32::from(count))),
        frets: fixed(view.frets.iter().map(|fret| fret.map_or(-1, i32::from))),
        fingers: fixed(view.fingers.iter().map(text)),
        barres: fixed(view.barres.iter().map(|&(_, fret, from, to)| made::Barre {
            fret: fret.into(),
            from: int(from),
            to: int(to),
        })),
        first_fret: view.first_fret.into(),
        rows: i32::from(highest) - i32::from(view.first_fret) + 1,
        missing: words.missing(&view.missing).into(),
        said: words.shape(chord, view).into(),
    }
}

fn slot(slot: &crate::desk::SlotView) -> made::Slot {
    made::Slot {
        count: slot.count.as_str().into(),
        on_beat: slot.on_beat,
        up: slot.up,
        silent: slot.silent,
        bass: slot.bass,
        chop: slot.chop,
        accent: slot.accent,
    }
}

fn ring(words: &Words, view: &StandView) -> Vec<made::RingString> {
    let one = |ring: &crate::desk::RingString| made::RingString {
        name: ring.name.as_str().into(),
        verdict: match ring.verdict {
            Verdict::Ring => made::Ringing::Ring,
            Verdict::Colour => made::Ringing::Leave,
            Verdict::Clash => made::Ringing::Clash,
        },
        said: words.ring(ring).into(),
    };
    view.ring.iter().map(one).collect()
}

fn form(words: &Words, view: &StandView) -> Vec<made::FormChip> {
    let one = |chip: &crate::desk::FormChip| made::FormChip {
        name: chip_name(chip).into(),
        passed: passed(chip.passed),
        said: words.chip(chip).into(),
    };
    view.form.iter().map(one).collect()
}

fn keys(view: &StandView) -> Vec<made::KeyChoice> {
    let one = |(at, (name, _)): (usize, &(String, NoteName))| made::KeyChoice {
        name: name.as_str().into(),
        current: *name == view.key,
        written: at == 0,
    };
    view.keys.iter().enumerate().map(one).collect()
}

fn safe(words: &Words, view: &StandView) -> Vec<made::SafePart> {
    let one = |part: &crate::desk::SafePart| made::SafePart {
        part: part.part.as_str().into(),
        now: part.now,
        over: words.safe_over(part).into(),
        chord: chord(words, view.names, &part.chord),
        fits: words.safe_fits(part).into(),
        note: words.safe_note(part).into(),
    };
    view.safe.iter().map(one).collect()
}

fn passed(passed: Passed) -> made::Passed {
    match passed {
        Passed::Played => made::Passed::Played,
        Passed::Now => made::Passed::Now,
        Passed::Ahead => made::Passed::Ahead,
    }
}

fn show_map(models: &mut Models, words: &Words, view: &StandView) {
    models.bars.truncate(view.map.len());
    models.bars.resize_with(view.map.len(), Rc::default);
    let mut lines = Vec::with_capacity(view.map.len());
    let looped = |played: usize| {
        let mut all = view.map.iter().flat_map(|line| &line.bars);
        all.any(|bar| bar.played == played && bar.looped)
    };
    for (line, bars) in view.map.iter().zip(&models.bars) {
        let one = |bar: &crate::desk::MapBar| made::MapBar {
            looped: bar.looped,
            begins: bar.looped && !bar.played.checked_sub(1).is_some_and(looped),
            ends: bar.looped && !looped(bar.played + 1),
            played: int(bar.played),
            chords: bar.chords.as_str().into(),
            numbers: bar.numbers.as_str().into(),
            pickup: bar.pickup,
            ending: bar.ending.as_str().into(),
            passed: passed(bar.passed),
            said: words.bar(bar).into(),
        };
        keep(bars, line.bars.iter().map(one).collect());
        let pickups = line.bars.iter().filter(|bar| bar.pickup).count();
        let first = line.bars.first().is_some_and(|bar| bar.pickup);
        lines.push(made::MapLine {
            part: line.part.as_str().into(),
            top: int(line.top),
            number: int(lines.len() + 1),
            current: line.current,
            full: int(line.bars.len() - pickups).max(4),
            pickups: int(pickups - usize::from(first)),
            bars: ModelRc::from(Rc::clone(bars) as Rc<dyn slint::Model<Data = made::MapBar>>),
        });
    }
    // Lines hold on to the models of their bars, so a line is told only when its part or its length changes.
    keep(&models.lines, lines);
}

pub(super) fn hook(interface: &Interface) {
    let global = interface.app().global::<made::Stand<'_>>();
    global.on_back(interface.asks_for(Ask::Back));
    global.on_next_bar(interface.asks_for(Ask::NextBar));
    global.on_bar_back(interface.asks_for(Ask::BarBack));
    global.on_hold(interface.asks_for(Ask::Hold));
    global.on_this_is_one(interface.asks_for(Ask::ThisIsOne));
    global.on_tap_tempo(interface.asks_for(Ask::TapTempo));
    global.on_written_key(interface.asks_for(Ask::WrittenKey));
    global.on_set_listed(interface.asks(|_, on| Some(Ask::Tonight(TonightAsk::ListOpen(on)))));
    global.on_to_next_tune(interface.asks_for(Ask::Tonight(TonightAsk::Next)));
    global.on_other_shape(interface.asks_for(Ask::OtherShape));
    global.on_practise(interface.asks_for(Ask::Go(Room::Porch)));
    global.on_jump_to(interface.asks(|_, bar: i32| usize::try_from(bar).ok().map(Ask::JumpTo)));
    global.on_jump_to_part(
        interface.asks(|_, chip: i32| usize::try_from(chip).ok().map(Ask::JumpToPart)),
    );
    global.on_jump_to_line(
        interface.asks(|_, bar: i32| usize::try_from(bar).ok().map(Ask::JumpToLine)),
    );
    global.on_called(interface.asks_for(Ask::Go(Room::Called)));
    global.on_set_clock(interface.asks(|_, on| Some(Ask::Clock(on))));
    global.on_faster(interface.asks(|_, by| Some(Ask::Faster(by))));
    global.on_set_times(interface.asks(|_, times: i32| u32::try_from(times).ok().map(Ask::Times)));
    global.on_set_last_time(interface.asks(|_, on| Some(Ask::LastTime(on))));
    global.on_key_up(interface.asks(|_, by| Some(Ask::KeyUp(by))));
    global.on_key_choose(interface.asks(chosen_key));
    global.on_set_names(interface.asks(|_, index| at(&NAMES, index).map(Ask::Names)));
    global.on_set_simpler(interface.asks(|_, index| at(&SIMPLER, index).map(Ask::Simpler)));
    global.on_set_capo(interface.asks(|_, frets: i32| u8::try_from(frets).ok().map(Ask::Capo)));
}

/// A key from the list.
fn chosen_key(interface: &Interface, index: i32) -> Option<Ask> {
    let stand = interface.0.stand.borrow();
    let keys = &stand.shown.as_ref()?.keys;
    let (_, tonic) = keys.get(usize::try_from(index).ok()?)?;
    Some(Ask::KeyOn(*tonic))
}
