//! A pace that wanders and returns, as the sum of coins kept or tossed anew (K. G. Rouwenhorst, "Asset pricing implications
//! of equilibrium business cycle models", 1995; from memory).

/// Returns the odds of the number of heads among `N` - 1 fair coins.
pub(super) fn coins<const N: usize>() -> [f32; N] {
    let mut odds = [0.0; N];
    odds[0] = 1.0;
    for coin in 1..N {
        for i in (0..=coin).rev() {
            odds[i] = (odds[i] + if i > 0 { odds[i - 1] } else { 0.0 }) / 2.0;
        }
    }
    odds
}

/// Returns the odds to go from i to j heads among `N` - 1 coins when each stays as it lies with odds (1 + `kept`) / 2.
pub(super) fn tossed<const N: usize>(kept: f64) -> [[f32; N]; N] {
    let stay = ((1.0 + kept.clamp(0.0, 1.0)) / 2.0) as f32;
    let mut odds = [[0.0; N]; N];
    for (i, row) in odds.iter_mut().enumerate() {
        row[0] = 1.0;
        for coin in 0..N - 1 {
            let head = if coin < i { stay } else { 1.0 - stay };
            for j in (0..=coin + 1).rev() {
                let less = if j > 0 { row[j - 1] } else { 0.0 };
                row[j] = row[j] * (1.0 - head) + less * head;
            }
        }
    }
    odds
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coins_have_the_spread_and_the_memory_they_stand_for() {
        const MOMENT: usize = 5;
        let start = coins::<MOMENT>();
        let turn = tossed::<MOMENT>(0.6);
        let place = |i: usize| (2.0 * i as f32 - 4.0) / 2.0;
        let variance: f32 = (0..MOMENT).map(|i| start[i] * place(i).powi(2)).sum();
        let lagged: f32 = (0..MOMENT)
            .flat_map(|i| (0..MOMENT).map(move |j| (i, j)))
            .map(|(i, j)| start[i] * turn[i][j] * place(i) * place(j))
            .sum();
        assert!((variance - 1.0).abs() < 1e-6);
        assert!((lagged - 0.6).abs() < 1e-6);
    }
}
