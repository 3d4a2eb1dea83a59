//! The name someone likely meant.

/// Returns the candidate that begins with `name`, or the nearest in edits, if within a third of its length.
pub(super) fn nearest(
    name: &str,
    candidates: impl Iterator<Item = &'static str>,
) -> Option<&'static str> {
    let candidates: Vec<&'static str> = candidates.collect();
    if name.len() > 3
        && let Some(longer) = candidates.iter().find(|longer| longer.starts_with(name))
    {
        return Some(longer);
    }
    let name: Vec<char> = name.to_lowercase().chars().take(64).collect();
    candidates
        .into_iter()
        .map(|candidate| (edits(&name, candidate), candidate))
        .min_by_key(|(edits, _)| *edits)
        .filter(|(edits, candidate)| edits * 3 <= candidate.len().max(name.len()))
        .map(|(_, candidate)| candidate)
}

/// Counts the letters to put in, take out or change (Levenshtein), case aside.
fn edits(from: &[char], to: &str) -> usize {
    let to: Vec<char> = to.to_lowercase().chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (i, a) in from.iter().enumerate() {
        let mut corner = row[0];
        row[0] = i + 1;
        for (j, b) in to.iter().enumerate() {
            let change = corner + usize::from(a != b);
            corner = row[j + 1];
            row[j + 1] = change.min(row[j] + 1).min(corner + 1);
        }
    }
    row[to.len()]
}
