//! Collecting problems with their places.

use super::super::{Counted, Problem, ProblemKind, limits};

/// A line that problems can be told of.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot<'a> {
    /// From 1.
    pub(super) line: usize,
    /// The whole line.
    pub(super) text: &'a str,
    /// Where in it we are, in bytes.
    pub(super) byte: usize,
}

impl<'a> Spot<'a> {
    pub(super) fn start(line: super::lines::Line<'a>) -> Self {
        Self {
            line: line.number,
            text: line.text,
            byte: 0,
        }
    }

    /// So many bytes further on; not beyond the line.
    pub(super) fn plus(self, bytes: usize) -> Self {
        Self {
            byte: self.byte.saturating_add(bytes).min(self.text.len()),
            ..self
        }
    }
}

/// Problems so far, up to a bound.
#[derive(Debug, Default)]
pub(super) struct Problems(Vec<Problem>);

impl Problems {
    pub(super) fn add(&mut self, spot: Spot<'_>, kind: ProblemKind) {
        if self.0.len() > limits::PROBLEMS {
            return;
        }
        let kind = if self.0.len() == limits::PROBLEMS {
            ProblemKind::TooMany(Counted::Problems)
        } else {
            kind
        };
        let before = &spot.text[..spot.text.floor_char_boundary(spot.byte)];
        self.0.push(Problem {
            line: spot.line,
            column: before.chars().count() + 1,
            kind,
        });
    }

    /// Adds a problem of which one is enough in a tune.
    pub(super) fn add_once(&mut self, spot: Spot<'_>, kind: ProblemKind) {
        if self.0.iter().all(|problem| problem.kind != kind) {
            self.add(spot, kind);
        }
    }

    pub(super) fn finish(mut self) -> Vec<Problem> {
        self.0.sort_by_key(|problem| (problem.line, problem.column));
        self.0
    }
}

/// A piece of outside text that is short enough to be told.
pub(super) fn excerpt(text: &str) -> String {
    text.trim().chars().take(40).collect()
}
