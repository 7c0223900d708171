//! Our own lines, which other programs skip: `%%fourcourse-strum` and `%%fourcourse-times`.

use crate::chart::{Metre, Part, StrumPattern};

use super::super::ProblemKind;
use super::problems::excerpt;

/// How the names of our lines begin.
pub(super) const PREFIX: &str = "fourcourse-";

/// What our lines say of the whole tune.
#[derive(Debug, Default)]
pub(super) struct Ours {
    pub(super) strum: Option<StrumPattern>,
    pub(super) times: Option<u8>,
}

impl Ours {
    /// A line by its name. A strum within the music belongs to the part it stands in.
    pub(super) fn line(
        &mut self,
        name: &str,
        value: &str,
        metre: Metre,
        part: Option<&mut Part>,
    ) -> Result<(), ProblemKind> {
        match name {
            "strum" => {
                let strum = StrumPattern::read(value, metre)
                    .map_err(|_| ProblemKind::Strum(excerpt(value)))?;
                match part {
                    Some(part) => part.strum = Some(strum),
                    None => self.strum = Some(strum),
                }
                Ok(())
            }
            "times" => {
                let times = value.trim().parse().ok().filter(|&times| times > 0);
                self.times = Some(times.ok_or_else(|| ProblemKind::Directive(name.to_owned()))?);
                Ok(())
            }
            // A line of a later version of ours.
            _ => Ok(()),
        }
    }
}
