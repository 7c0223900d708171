//! How much a chord needs each of its tones: what a hand may leave out and an ear still takes for the same chord.

use super::chord::{Degree, Quality};

/// How much a chord needs one of its tones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Need {
    /// Without it, it is another chord: sevenths, sixths, altered tones, suspensions, the name-giving extension.
    Vital,
    /// The third of a triad with a perfect fifth: without it the chord is bare, but it still fits the tune.
    Third,
    /// The root of a chord of four tones or more: the others tell it.
    Root,
    /// The perfect fifth of a triad that has a third: without it the chord is thin.
    Fifth,
    /// The perfect fifth of a bigger chord, or an extension below the name-giving one: nobody misses it.
    Spare,
}

impl Quality {
    /// How much the quality needs one of its degrees. Common practice: the fifth goes first, then lower extensions and
    /// the root; third, seventh and altered tones stay.
    ///
    /// ```
    /// use fourcourse::theory::{Degree, Need, Quality};
    /// assert_eq!(Quality::SEVENTH.need(Degree::Fifth), Need::Spare);
    /// assert_eq!(Quality::SEVENTH.need(Degree::MinorSeventh), Need::Vital);
    /// assert_eq!(Quality::MINOR.need(Degree::MinorThird), Need::Third);
    /// ```
    pub fn need(self, degree: Degree) -> Need {
        use Degree::{
            Eleventh, Fifth, FlatThirteenth, MajorThird, MinorThird, Ninth, Root, SharpEleventh,
            Thirteenth,
        };
        let has = |degrees: &[Degree]| degrees.iter().any(|&degree| self.has(degree));
        let third = has(&[MajorThird, MinorThird]);
        let size = self.degrees().count();
        match degree {
            Root if size > 3 => Need::Root,
            Fifth if size > 3 => Need::Spare,
            Fifth if third => Need::Fifth,
            MajorThird if self.has(Eleventh) => Need::Spare,
            MajorThird | MinorThird if size == 3 && self.has(Fifth) => Need::Third,
            Ninth if has(&[Eleventh, SharpEleventh, Thirteenth, FlatThirteenth]) => Need::Spare,
            Eleventh if has(&[Thirteenth, FlatThirteenth]) => Need::Spare,
            _ => Need::Vital,
        }
    }
}
