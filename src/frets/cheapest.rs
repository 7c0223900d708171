//! The cheapest way through a row of choices, by dynamic programming.

/// For each column of options the index of the one that is chosen, so that the sum of what each costs on its own and of
/// what it costs after the one before is least. No column may be empty. Takes time linear in the number of columns.
pub(super) fn cheapest<T>(
    columns: &[Vec<T>],
    own: impl Fn(usize, &T) -> f32,
    between: impl Fn(usize, &T, &T) -> f32,
) -> Vec<usize> {
    // For each option the least cost up to there, and the option before.
    let mut ways: Vec<Vec<(f32, usize)>> = Vec::with_capacity(columns.len());
    for (column, options) in columns.iter().enumerate() {
        let way = |option: &T| {
            let own = own(column, option);
            let Some(before) = ways.last() else {
                return (own, 0);
            };
            let mut best = (f32::INFINITY, 0);
            for (from, (played, &(cost, _))) in columns[column - 1].iter().zip(before).enumerate() {
                if cost < best.0 {
                    let cost = cost + between(column, played, option);
                    if cost < best.0 {
                        best = (cost, from);
                    }
                }
            }
            (best.0 + own, best.1)
        };
        // Only differences matter: taking out the least keeps long tunes exact.
        let mut costs: Vec<(f32, usize)> = options.iter().map(way).collect();
        let least = costs
            .iter()
            .fold(f32::INFINITY, |least, way| least.min(way.0));
        for way in costs.iter_mut().filter(|_| least.is_finite()) {
            way.0 -= least;
        }
        ways.push(costs);
    }
    let mut at = 0;
    for (index, way) in ways.last().into_iter().flatten().enumerate() {
        if way.0 < ways[ways.len() - 1][at].0 {
            at = index;
        }
    }
    let mut chosen = vec![0; columns.len()];
    for (column, way) in ways.iter().enumerate().rev() {
        chosen[column] = at;
        at = way[at].1;
    }
    chosen
}

#[cfg(test)]
mod tests {
    use super::cheapest;

    #[test]
    fn a_dear_step_is_taken_where_it_saves_more_later() {
        let columns = vec![vec![0, 9], vec![0, 9], vec![9]];
        let between = |_: usize, a: &i32, b: &i32| if a == b { 0.0 } else { 5.0 };
        let dear = |column: usize, option: &i32| {
            if column == 0 && *option == 9 {
                3.0
            } else {
                0.0
            }
        };
        assert_eq!(cheapest(&columns, dear, between), [1, 1, 0]);
        assert_eq!(
            cheapest::<u8>(&[], |_, _| 0.0, |_, _, _| 0.0),
            Vec::<usize>::new()
        );
    }
}
