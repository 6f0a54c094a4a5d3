//! Texts that were checked, ready to be written.

use std::path::Path;
use std::sync::{Arc, LazyLock};

use serde_json::Value;
use storyrod::diagnostic::Diagnostic;
use storyrod::inputs::Inputs;
use storyrod::report::{Around, Checked, Part, Unusable, write_sarif};
use storyrod::snapshot::{Caches, Snapshot, analyse};
use storyrod::syntax::value::Date;
use storyrod::text::Source;

use crate::mistakes::{List, lists, text_of, with};

/// The day on which tests happen.
pub const TODAY: Date = Date { year: 2027, month: 6, day: 1 };

/// A spec of one file that was checked.
pub struct House {
    pub snapshot: Snapshot,
    pub names: Vec<String>,
}

impl House {
    pub fn of(name: &str, text: &str) -> Self {
        let sources = vec![Source::new(name, text)];
        let inputs = Inputs { sources, includes: Vec::new() };
        let snapshot = analyse(&Arc::new(inputs), &mut Caches::default(), TODAY, &|| false).unwrap();
        Self { snapshot, names: vec![name.to_owned()] }
    }

    pub fn checked(&self) -> Checked<'_> {
        Checked {
            sources: &self.snapshot.inputs.sources,
            names: &self.names,
            is_alone: false,
            findings: &self.snapshot.findings,
            waived: &self.snapshot.waived,
            n_known: 0,
        }
    }

    /// Every finding, each root with what follows from it behind it.
    pub fn findings(&self) -> impl Iterator<Item = &Diagnostic> {
        self.snapshot.findings.iter().flat_map(Diagnostic::with_consequences)
    }

    pub fn text(&self) -> &str {
        &self.snapshot.inputs.sources[0].text
    }
}

/// Every listed mistake, made in its house, under its own name: all rules that a line can set off.
pub static EVERY_MISTAKE: LazyLock<Vec<House>> = LazyLock::new(|| {
    let of_list = |list: List| {
        let house = text_of(&list.house);
        let name = |id: &str| format!("{}/{id}.framing", list.house);
        let mistakes = list.mistakes.iter();
        let houses: Vec<_> =
            mistakes.map(|mistake| House::of(&name(&mistake.id), &with(mistake, &house))).collect();
        // A mistake that leaves no trace in the text alone has none here.
        houses.into_iter().filter(|house| !house.snapshot.findings.is_empty())
    };
    lists().into_iter().flat_map(of_list).collect()
});

/// The log of all of them.
pub static EVERY_LOG: LazyLock<Value> =
    LazyLock::new(|| sarif_of(&EVERY_MISTAKE, &[], Some("https://example.org/rules#")));

/// The log of a run in `/job`.
pub fn sarif_of(houses: &[House], unusable: &[Unusable], rules_address: Option<&str>) -> Value {
    sarif_of_part(houses, unusable, rules_address, Part::default())
}

/// The log of a run in `/job` that looked at a part.
pub fn sarif_of_part(
    houses: &[House],
    unusable: &[Unusable],
    rules_address: Option<&str>,
    part: Part<'_>,
) -> Value {
    let all: Vec<_> = houses.iter().map(House::checked).collect();
    let mut out = Vec::new();
    let around = Around { here: Path::new("/job"), base: Path::new("/job"), rules_address };
    write_sarif(&all, unusable, around, part, &mut out).unwrap();
    serde_json::from_slice(&out).unwrap()
}

/// The results of a log.
pub fn results_of(log: &Value) -> &[Value] {
    log["runs"][0]["results"].as_array().unwrap()
}

/// Each house of a log with its results that no waiver silences.
pub fn by_house<'a>(log: &'a Value, houses: &'a [House]) -> Vec<(&'a House, Vec<&'a Value>)> {
    let mut results = results_of(log).iter();
    let of_house = |house: &'a House| {
        let found: Vec<_> = results.by_ref().take(house.findings().count()).collect();
        for _ in &house.snapshot.waived {
            assert_ne!(results.next().unwrap()["suppressions"], Value::Array(Vec::new()));
        }
        (house, found)
    };
    let all = houses.iter().map(of_house).collect();
    assert!(results.next().is_none());
    all
}
