//! Bars into lines: as many to a line as on paper, spread over its width.

use crate::chart::Part;

use super::Paper;
use super::measure::Measure;

/// Full bars that belong together, as in most phrases.
const GROUP: usize = 4;

/// Full bars of a line, the first that fits.
const A_LINE: [usize; 3] = [GROUP, 2, 1];

/// A line may be this much wider than it looks best; more would tear it apart.
const MOST_EASE: f32 = 2.0;

/// The measures of each line: four bars, or where these do not fit two and two, or one by one. Parts begin a line; a
/// pickup stands with the bar that it leads into.
pub(super) fn lines(
    parts: &[Part],
    paper: &Paper,
    measures: &[Measure],
    room: f32,
) -> Vec<Vec<usize>> {
    let all: Vec<usize> = (0..measures.len()).collect();
    let cut = |indices: &[usize], count| cut(parts, measures, indices, count);
    let fits = |lines: &Vec<Vec<usize>>| {
        let fits = |line: &Vec<usize>| width(measures, line, Measure::least) <= room;
        lines.iter().all(fits)
    };
    let most = paper.most_bars.max(1);
    let lines = cut(&all, GROUP).into_iter().flat_map(|group| {
        let counts = A_LINE.into_iter().filter(|&count| count <= most);
        let mut ways = counts.map(|count| cut(&group, count));
        ways.find(fits).unwrap_or_else(|| cut(&group, 1))
    });
    lines.collect()
}

/// Measures in lines of so many full bars.
fn cut(parts: &[Part], measures: &[Measure], indices: &[usize], count: usize) -> Vec<Vec<usize>> {
    let begins = |measure: &Measure| {
        let start = parts.binary_search_by_key(&measure.bar, |part| part.first_bar);
        start.is_ok()
    };
    let mut lines: Vec<Vec<usize>> = Vec::new();
    let mut full = 0;
    for &index in indices {
        let measure = &measures[index];
        match lines.last_mut() {
            Some(line) if full < count && !begins(measure) => line.push(index),
            _ => {
                lines.push(vec![index]);
                full = 0;
            }
        }
        full += usize::from(!measure.pickup);
    }
    lines
}

fn width(measures: &[Measure], line: &[usize], of: fn(&Measure) -> f32) -> f32 {
    line.iter().map(|&index| of(&measures[index])).sum()
}

/// Lays the bars of a line side by side from `x` on, over the room that there is.
pub(super) fn lay(
    paper: &Paper,
    measures: &mut [Measure],
    line: &[usize],
    signs: &[Vec<f32>],
    (x, room): (f32, f32),
) {
    let natural = width(measures, line, Measure::natural);
    let least = width(measures, line, Measure::least);
    let ease = if natural <= room {
        // What stands around the events does not grow.
        let sides: f32 = line
            .iter()
            .map(|&index| measures[index].natural())
            .sum::<f32>()
            - line
                .iter()
                .map(|&index| measures[index].events_room())
                .sum::<f32>();
        ((room - sides) / (natural - sides).max(1.0)).min(MOST_EASE)
    } else if least <= room {
        ((room - least) / (natural - least).max(0.01)).min(1.0)
    } else {
        // A single bar that is too full for the paper: its events stand closer than they should.
        let sides = least
            - line
                .iter()
                .map(|&index| measures[index].least_room())
                .sum::<f32>();
        -((room - sides) / (least - sides).max(1.0)).max(0.1)
    };
    let mut at = x;
    for &index in line {
        measures[index].lay(paper, at, ease, &signs[index]);
        at += measures[index].width;
    }
}
