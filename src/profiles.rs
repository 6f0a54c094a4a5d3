//! Named sets of limits, each limit with its section and how sure we are of it.
//!
//! A rule asks [`Limits::of`] with one of the typed constants below: it cannot misspell a name, and gets the
//! project's own value where the spec overrides one. Sections are cited, never quoted. A local amendment, or the text
//! as adopted, goes before any of these.

use std::collections::BTreeMap;
use std::fmt::Write as _;

#[macro_use]
mod limit;

pub mod foundations;
pub mod framing;
pub mod levels;
pub mod loads;
pub mod stairs;

pub use limit::{Count, Factor, Lengths, Limit, LimitValue, OneIn, Percent, Quantity, Status};

/// A named set of limits.
#[derive(Debug)]
pub struct Profile {
    /// The word a project writes: `irc-2021`.
    pub name: &'static str,
    /// What it stands for.
    pub title: &'static str,
    /// Its limits by subject.
    pub groups: &'static [Group],
}

/// The limits of one subject.
#[derive(Debug)]
pub struct Group {
    /// The subject.
    pub title: &'static str,
    /// Its limits.
    pub limits: &'static [Limit],
}

/// Every profile, oldest edition first.
///
/// From memory, the two editions agree in every limit held here, so they share their groups.
pub const PROFILES: &[&Profile] = &[
    &Profile { name: "irc-2018", title: "International Residential Code, 2018", groups: RESIDENTIAL },
    NEWEST,
];

const NEWEST: &Profile =
    &Profile { name: "irc-2021", title: "International Residential Code, 2021", groups: RESIDENTIAL };

const RESIDENTIAL: &[Group] = &[
    Group { title: "Stairs, landings, guards", limits: stairs::LIMITS },
    Group { title: "Levels, ceilings, tolerances, drying", limits: levels::LIMITS },
    Group { title: "Foundations, footings, columns", limits: foundations::LIMITS },
    Group { title: "Joists, beams, openings, drains", limits: framing::LIMITS },
    Group { title: "Loads", limits: loads::LIMITS },
];

/// A name that nothing bears, with the nearest that something does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownName {
    /// The nearest names, nearest first.
    pub nearest: Vec<&'static str>,
}

/// The profile of this name.
pub fn profile(name: &str) -> Result<&'static Profile, UnknownName> {
    PROFILES
        .iter()
        .copied()
        .find(|profile| profile.name == name)
        .ok_or_else(|| nearest(name, PROFILES.iter().map(|profile| profile.name)))
}

impl Profile {
    /// Its limit of this name.
    pub fn limit(&self, name: &str) -> Result<&'static Limit, UnknownName> {
        self.limits()
            .find(|limit| limit.name == name)
            .ok_or_else(|| nearest(name, self.limits().map(|limit| limit.name)))
    }

    /// All its limits.
    pub fn limits(&self) -> impl Iterator<Item = &'static Limit> {
        self.groups.iter().flat_map(|group| group.limits)
    }
}

fn nearest(name: &str, names: impl Iterator<Item = &'static str>) -> UnknownName {
    let names: Vec<&str> = names.collect();
    UnknownName { nearest: similar::get_close_matches(name, &names, 3, 0.6) }
}

/// The limits that hold for one project: its profile, and what it overrides.
#[derive(Clone, Debug)]
pub struct Limits {
    profile: &'static Profile,
    overridden: BTreeMap<&'static str, LimitValue>,
}

/// A limit as it holds for a project.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Applied<T> {
    /// Its value.
    pub value: T,
    /// Its name, as a project writes it to override it.
    pub name: &'static str,
    /// The section it comes from; of the profile's own value when the project overrides it.
    pub section: &'static str,
    /// How sure we are of the profile's own value.
    pub status: Status,
    /// The project states another value than the profile.
    pub is_overridden: bool,
}

impl<T> Applied<T> {
    /// What the limit rests on, as a finding cites it: `R311.7.5.1 (from memory)`.
    pub fn basis(&self) -> String {
        let basis = match (self.section, self.status) {
            ("-", _) => "common practice".to_owned(),
            (section, Status::Confirmed(copy) | Status::LowGradeCopy(copy)) => format!("{section} ({copy})"),
            (section, Status::FromMemory) => format!("{section} (from memory)"),
            (section, Status::CommonPractice) => format!("common practice; compare {section}"),
        };
        if self.is_overridden {
            format!("this project's own `limit {}`, in place of {basis}", self.name)
        } else {
            basis
        }
    }
}

/// Why a project's own limit cannot stand.
#[derive(Clone, Debug, PartialEq)]
pub enum Refused {
    /// The profile has no such limit.
    Unknown(UnknownName),
    /// The limit is of another kind, as its own value shows.
    OtherKind(LimitValue),
}

impl Limits {
    /// Those of the newest profile, for a spec that names none that can be read.
    pub const fn newest() -> Self {
        Self::new(NEWEST)
    }

    /// Those of a profile, none overridden.
    pub const fn new(profile: &'static Profile) -> Self {
        Self { profile, overridden: BTreeMap::new() }
    }

    /// The profile they come from.
    pub const fn profile(&self) -> &'static Profile {
        self.profile
    }

    /// Puts the project's own value in a limit's place. A whole number stands for a share (`480` for 1/480) or a
    /// factor as well.
    pub fn override_with(&mut self, name: &str, value: LimitValue) -> Result<(), Refused> {
        let limit = self.profile.limit(name).map_err(Refused::Unknown)?;
        let value = value.as_kind_of(limit.value).ok_or(Refused::OtherKind(limit.value))?;
        self.overridden.insert(limit.name, value);
        Ok(())
    }

    /// A limit as it holds here: the project's value, else the profile's own.
    pub fn of<T: Quantity>(&self, limit: &Limit<T>) -> Applied<T> {
        let stated = self.overridden.get(limit.name).copied().and_then(T::of);
        let listed = self.profile.limits().find(|listed| listed.name == limit.name);
        let own = listed.and_then(|listed| T::of(listed.value)).unwrap_or(limit.value);
        Applied {
            value: stated.unwrap_or(own),
            name: limit.name,
            section: listed.map_or(limit.section, |listed| listed.section),
            status: listed.map_or(limit.status, |listed| listed.status),
            is_overridden: stated.is_some(),
        }
    }
}

/// The reference page of all limits.
pub fn table() -> String {
    let mut page = String::from(HEAD);
    for profile in PROFILES {
        let _ = writeln!(page, "- `{}`: {}", profile.name, profile.title);
    }
    for group in RESIDENTIAL {
        let _ = writeln!(
            page,
            "\n## {}\n\n| limit | value | meaning | section | how sure |\n| --- | --- | --- | --- | --- |",
            group.title
        );
        for limit in group.limits {
            let _ = writeln!(
                page,
                "| `{}` | {} | {} | {} | {} |",
                limit.name, limit.value, limit.meaning, limit.section, limit.status
            );
        }
    }
    page
}

const HEAD: &str = "# Limits

A project names a profile and may override any limit but a list: `limit riser-difference 1/2\"`.
A share such as 1/360 is overridden by its lower number: `limit deflection-live 480`.
The sections are those of the residential code unless another document is named; check each against the text as adopted where the house stands.
Meeting them is no design: the building official and a licensed professional have the last word.
Every confirmed value was read in a copy that is not the code's own print.
Frost depth has no default: the project states it.

The profiles below hold the same limits; their editions differ in none of them, from memory.

";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{AreaLoad, Length};

    #[test]
    fn an_override_takes_the_limit_s_place_and_says_so() {
        let mut limits = Limits::new(profile("irc-2021").unwrap());
        let stated = Length::sixteenths(0, 8);
        assert!(!limits.of(&stairs::RISER_DIFFERENCE).is_overridden);
        limits.override_with("riser-difference", LimitValue::Length(stated)).unwrap();
        let applied = limits.of(&stairs::RISER_DIFFERENCE);
        assert_eq!((applied.value, applied.is_overridden), (stated, true));
        assert_eq!(applied.section, "R311.7.5.1");
        assert!(!limits.of(&stairs::RISER_HEIGHT).is_overridden);

        limits.override_with("deflection-live", LimitValue::Count(Count(480))).unwrap();
        assert_eq!(limits.of(&framing::DEFLECTION_LIVE).value, OneIn(480));
    }

    #[test]
    fn an_override_of_another_kind_is_refused() {
        let mut limits = Limits::new(profile("irc-2018").unwrap());
        let load = LimitValue::AreaLoad(AreaLoad::psf(40.0));
        let refused = limits.override_with("riser-height", load);
        assert_eq!(refused, Err(Refused::OtherKind(LimitValue::Length(Length::sixteenths(7, 12)))));
        let unknown = limits.override_with("riser-hight", LimitValue::Length(Length::inches(7)));
        let Err(Refused::Unknown(UnknownName { nearest })) = unknown else { panic!("an unknown name") };
        assert_eq!(nearest.first(), Some(&"riser-height"));
        let nothing = limits.override_with("deflection-live", LimitValue::Count(Count(0)));
        assert!(matches!(nothing, Err(Refused::OtherKind(_))));
    }

    #[test]
    fn a_profile_is_found_by_name_or_offered() {
        assert!(profile("irc-2018").is_ok());
        assert_eq!(profile("irc2021").unwrap_err().nearest.first(), Some(&"irc-2021"));
    }

    #[test]
    fn names_are_slugs_and_stand_once() {
        for profile in PROFILES {
            let mut names: Vec<&str> = profile.limits().map(|limit| limit.name).collect();
            for name in &names {
                assert!(name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{name}");
            }
            let count = names.len();
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), count);
        }
    }

    /// The page shows one set of groups for all profiles.
    #[test]
    fn every_profile_holds_the_groups_shown() {
        for profile in PROFILES {
            assert!(std::ptr::eq(profile.groups, RESIDENTIAL), "{}", profile.name);
        }
    }

    #[test]
    fn the_committed_page_is_the_rendered_one() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/limits.md");
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(path, table()).unwrap();
        }
        let committed = std::fs::read_to_string(path).unwrap();
        assert!(committed == table(), "grammar/limits.md is stale: run `UPDATE=1 cargo test`");
    }
}
