//! What the commands about forces share: they find the spec and the element, and say when errors stand in the way.

use std::io::{self, Write};
use std::path::Path;

use crate::cli::input::specs_of;
use crate::cli::lint::analysed;
use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::house::House;
use crate::model::element::ElementId;
use crate::report::counted;
use crate::text::nearest;

/// What is asked for.
#[derive(Clone, Copy, Debug)]
pub(in crate::cli) struct Wanted<'a> {
    /// The root file of a spec, or a folder with one.
    pub spec: &'a Path,
    /// An element's name.
    pub element: Option<&'a str>,
}

/// Writes something of each house that is asked for.
pub(in crate::cli) fn with_house<W: Write>(
    wanted: &Wanted<'_>,
    out: &mut W,
    write: impl Fn(&House, Option<ElementId>, &mut W) -> io::Result<()>,
) -> anyhow::Result<Outcome> {
    let found = specs_of(&[wanted.spec.to_path_buf()], None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let (mut has_errors, mut is_usable) = (false, found.unusable.is_empty());
    for analysed in analysed(found.specs)? {
        let checked = analysed.checked();
        let n_errors = checked.count(Severity::Error);
        if n_errors > 0 {
            has_errors = true;
            writeln!(
                out,
                "{} has {}: settle them before anybody relies on these figures (`storyrod lint` shows them)\n",
                checked.name(),
                counted(n_errors, "error")
            )?;
        }
        let house = &analysed.snapshot.house;
        let element = match wanted.element {
            None => None,
            Some(name) => match house.model.named(name) {
                Some(element) => Some(element),
                None => {
                    is_usable = false;
                    complain(&no_such_element(house, checked.name(), name));
                    continue;
                }
            },
        };
        write(house, element, out)?;
    }
    Ok(match (is_usable, has_errors) {
        (false, _) => Outcome::Unusable,
        (true, true) => Outcome::Found,
        (true, false) => Outcome::Clean,
    })
}

fn no_such_element(house: &House, spec: &str, name: &str) -> String {
    let names = house.model.commons().map(|common| &*common.name);
    match nearest(name, names) {
        Some(near) => format!("{spec} has no element `{name}`; did you mean `{near}`?"),
        None => format!("{spec} has no element `{name}`"),
    }
}
