//! Sentences of the porch.

use i18n_embed_fl::fl;

use crate::chart::Version;
use crate::desk::{
    ChangeView, Drill, LessonView, PhraseView, Reason, StopView, Suggestion, VersionView,
};
use crate::engraving::Hidden;

use super::Words;

impl Words {
    /// A version in a word or two.
    pub fn version_chip(&self, version: Version) -> String {
        match version {
            Version::Plain => fl!(self.loader, "porch-version-plain"),
            Version::KeyDrones => fl!(self.loader, "porch-version-key"),
            Version::ChordDrones => fl!(self.loader, "porch-version-chord"),
            Version::DoubleStops => fl!(self.loader, "porch-version-stops"),
        }
    }

    /// A version for those who listen.
    pub fn version_said(&self, view: &VersionView) -> String {
        let version = self.version_chip(view.version);
        let hard = view.hard;
        if view.easiest {
            fl!(
                self.loader,
                "porch-version-said-easiest",
                version = version,
                hard = hard
            )
        } else {
            fl!(
                self.loader,
                "porch-version-said",
                version = version,
                hard = hard
            )
        }
    }

    /// What is practised: `Phrase B 2`, or the whole tune.
    pub fn phrase(&self, view: &LessonView) -> String {
        let Some(phrase) = view.phrase.and_then(|phrase| view.phrases.get(phrase)) else {
            return fl!(self.loader, "porch-whole");
        };
        let same = phrase.same_as.and_then(|same| view.phrases.get(same));
        match same {
            Some(same) => {
                let like = fl!(
                    self.loader,
                    "porch-same",
                    part = same.part.as_str(),
                    number = same.number
                );
                format!("{} · {like}", self.phrase_name(phrase))
            }
            None => self.phrase_name(phrase),
        }
    }

    fn phrase_name(&self, phrase: &PhraseView) -> String {
        fl!(
            self.loader,
            "porch-phrase",
            part = phrase.part.as_str(),
            number = phrase.number
        )
    }

    /// What stands under the title: the key, and how fast it went today.
    pub fn lesson(&self, view: &LessonView) -> String {
        let mut said = vec![self.key_badge(&view.key, &view.mode)];
        match &view.drill {
            Some(Drill::Stop(stop)) => said.push(self.stop(stop)),
            Some(Drill::Change(from, to)) => said.push(format!("{from} – {to}")),
            None if view.rhythm.is_empty() => {}
            None => said.push(self.rhythm(&view.rhythm)),
        }
        said.extend(
            view.clean
                .map(|bpm| fl!(self.loader, "porch-clean", bpm = bpm)),
        );
        said.join(" · ")
    }

    /// How much of the page is to be seen.
    pub fn hidden(&self, hidden: Hidden) -> String {
        match hidden {
            Hidden::Nothing => fl!(self.loader, "porch-hidden-nothing"),
            Hidden::EveryOther => fl!(self.loader, "porch-hidden-other"),
            Hidden::AllButFirst => fl!(self.loader, "porch-hidden-first"),
            Hidden::Notes => fl!(self.loader, "porch-hidden-notes"),
            Hidden::Everything => fl!(self.loader, "porch-hidden-all"),
        }
    }

    /// What is wrong with the tune on this neck, and what was done or can be done about it. Empty where nothing is.
    pub fn lesson_warning(&self, view: &LessonView) -> String {
        let mut said = Vec::new();
        let octave = view.octave;
        if let Some(octave) = octave.filter(|octave| octave.taken) {
            said.push(self.octaves(octave.octaves));
        }
        if view.off_the_neck > 0 {
            let count = view.off_the_neck;
            said.push(fl!(self.loader, "tab-off-the-neck", count = count));
            said.push(match octave.filter(|octave| octave.all) {
                Some(octave) => {
                    let way = self.octave_way(octave.octaves);
                    fl!(self.loader, "porch-octave-offered", way = way)
                }
                None => self.onto_the_neck(count, None),
            });
        }
        said.extend(
            view.against
                .as_deref()
                .map(|bars| self.marked_against(bars)),
        );
        said.join(" ")
    }

    /// What rings beside the melody, and why.
    pub fn lesson_why(&self, view: &LessonView) -> String {
        match view.version {
            Version::Plain => fl!(self.loader, "porch-plain-why"),
            Version::DoubleStops => fl!(self.loader, "porch-stops-why"),
            Version::KeyDrones | Version::ChordDrones => self.drones(
                &view.rings.0,
                &view.rings.1,
                &self.key(&view.key, &view.mode),
            ),
        }
    }

    /// A move by octaves.
    pub fn octave_way(&self, octaves: i8) -> String {
        let count = octaves.unsigned_abs();
        if octaves < 0 {
            fl!(self.loader, "porch-octave-down", count = count)
        } else {
            fl!(self.loader, "porch-octave-up", count = count)
        }
    }

    /// A bar of the page for those who listen.
    pub fn bar_of_page(&self, bar: usize) -> String {
        fl!(self.loader, "porch-bar", bar = bar)
    }

    /// What of a tune is suggested, and in which version.
    pub fn suggested(&self, one: &Suggestion) -> String {
        let what = match &one.place {
            None => fl!(self.loader, "porch-whole"),
            Some((part, number)) => {
                let (part, number) = (part.as_str(), *number);
                fl!(self.loader, "porch-phrase", part = part, number = number)
            }
        };
        format!("{what} · {}", self.version_chip(one.version))
    }

    /// Why it is, and the beats a minute to start at and to aim for today.
    pub fn suggested_why(&self, one: &Suggestion) -> String {
        fl!(
            self.loader,
            "porch-start-aim",
            why = self.reason(one),
            start = one.bpm,
            goal = one.goal
        )
    }

    fn reason(&self, one: &Suggestion) -> String {
        let days = one.days.unwrap_or(0);
        match one.reason {
            Reason::Due => fl!(self.loader, "porch-due", days = days),
            Reason::NearlyThere => fl!(self.loader, "porch-nearly"),
            Reason::Next => fl!(self.loader, "porch-next"),
            Reason::New => fl!(self.loader, "porch-new"),
        }
    }

    /// All of it, for those who listen.
    pub fn suggested_said(&self, one: &Suggestion, tempo: &str) -> String {
        let (what, why) = (self.suggested(one), self.reason(one));
        fl!(
            self.loader,
            "porch-take",
            title = one.title.as_str(),
            what = what,
            why = why,
            tempo = tempo
        )
    }

    /// A double stop: `D 4 (2) + A 2 (1)`.
    pub fn stop(&self, stop: &StopView) -> String {
        let one = |(course, fret, finger): &(String, u8, u8)| -> String {
            let (course, fret, finger) = (course.as_str(), *fret, *finger);
            if finger == 0 {
                fl!(self.loader, "porch-stop-open", course = course, fret = fret)
            } else {
                fl!(
                    self.loader,
                    "porch-stop-finger",
                    course = course,
                    fret = fret,
                    finger = finger
                )
            }
        };
        stop.notes.each_ref().map(one).join(" + ")
    }

    /// A change of chords.
    pub fn change(&self, change: &ChangeView) -> String {
        format!("{} – {}", change.chords.0, change.chords.1)
    }
}
