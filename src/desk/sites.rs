//! How people name a site: by its whole name, its id, the first two words of the name, or the first alone where it is long
//! and no other site's begins with it.

use std::collections::BTreeMap;

use super::phrases::{Phrases, plain};
use crate::fleet::{Fleet, Site};

/// A word of so many letters that opens a site's name may stand for it.
const LONG: usize = 5;

/// Iterates over the sites of which a spelling, folded, fits, each with the longest that does.
pub(super) fn named(
    fleet: &Fleet,
    fits: impl Fn(&str) -> bool,
) -> impl Iterator<Item = (&Site, String)> {
    let folded: Vec<(&Site, String)> = fleet
        .sites
        .values()
        .map(|site| (site, plain(&site.name)))
        .collect();
    let mut opens: BTreeMap<String, usize> = BTreeMap::new();
    for (_, name) in &folded {
        *opens.entry(first(name).to_owned()).or_default() += 1;
    }
    folded.into_iter().filter_map(move |(site, name)| {
        let two: Vec<&str> = name.split(' ').take(2).collect();
        let telling = Some(first(&name)).filter(|word| word.len() >= LONG && opens[*word] == 1);
        let spellings = [
            Some(name.clone()),
            Some(plain(&site.id)),
            Some(two.join(" ")),
            telling.map(str::to_owned),
        ];
        let fitting = spellings.into_iter().flatten();
        let fitting = fitting.filter(|spelling| !spelling.is_empty() && fits(spelling));
        Some((site, fitting.max_by_key(String::len)?))
    })
}

/// Finds the one site that a text names, with the spelling that it names it by.
pub(super) fn named_in<'f>(fleet: &'f Fleet, text: &str) -> Option<(&'f Site, String)> {
    let said = format!(" {} ", plain(text));
    let mut sites = named(fleet, |spelling| said.contains(&format!(" {spelling} ")));
    sites.next().filter(|_| sites.next().is_none())
}

/// Finds the one site that a text names, or else by a long word of its name alone, behind a word of place: "at dovecote".
pub(super) fn placed_in<'f>(fleet: &'f Fleet, text: &str) -> Option<(&'f Site, String)> {
    if let Some(named) = named_in(fleet, text) {
        return Some(named);
    }
    let said = plain(text);
    let said: Vec<&str> = said.split(' ').collect();
    let place = |word: &str| Phrases::built_in().is("arrive", "place", word);
    let words = said.windows(2).filter(|pair| place(pair[0]));
    let mut words = words.map(|pair| pair[1]).filter(|word| word.len() >= LONG);
    words.find_map(|word| {
        let names = |site: &&Site| plain(&site.name).split(' ').any(|part| part == word);
        let mut sites = fleet.sites.values().filter(names);
        let site = sites.next().filter(|_| sites.next().is_none())?;
        Some((site, word.to_owned()))
    })
}

/// Finds the one site that a text names in any way, by a long word of its name that no other site has too: "the chapel".
pub(super) fn told_in<'f>(fleet: &'f Fleet, text: &str) -> Option<&'f Site> {
    if let Some((site, _)) = named_in(fleet, text) {
        return Some(site);
    }
    let said = plain(text);
    let said: Vec<&str> = said.split(' ').filter(|word| word.len() >= LONG).collect();
    let names = |site: &&Site| {
        plain(&site.name)
            .split(' ')
            .any(|word| said.contains(&word))
    };
    let mut sites = fleet.sites.values().filter(names);
    sites.next().filter(|_| sites.next().is_none())
}

fn first(name: &str) -> &str {
    name.split(' ').next().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::demo;

    #[test]
    fn a_site_is_known_by_the_spellings_that_tell_it_alone() {
        let fleet = demo::fleet();
        let ids = |text: &str| -> Vec<&str> {
            let said = format!(" {text} ");
            let sites = named(&fleet, |spelling| said.contains(&format!(" {spelling} ")));
            sites.map(|(site, _)| site.id.as_str()).collect()
        };
        let barn = ids("at sleigh barn at dovecote farm");
        assert_eq!(barn.len(), 1);
        assert_eq!(ids("gate of sleigh barn"), barn);
        assert_eq!(ids("the sleigh one"), barn);
        assert!(ids("the barn").is_empty());
        let placed = |text: &str| Some(placed_in(&fleet, text)?.0.id.as_str());
        assert_eq!(placed("low tonight 12F at dovecote"), Some("sleigh-barn"));
        assert_eq!(placed("the dovecote gate"), None);
        assert_eq!(placed("low at night"), None);
    }
}
