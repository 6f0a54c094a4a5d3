//! `storyrod steps`: how the step between two floors can be divided.

use std::io::Write;
use std::path::PathBuf;

use clap::Args;

use crate::cli::input::specs_of;
use crate::cli::lint::analysed;
use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::geometry::step_divider;
use crate::house::House;
use crate::model::element::ElementId;
use crate::report::{self, Palette, counted};
use crate::syntax::vocabulary::ElementKind;
use crate::text::nearest;

#[derive(Debug, Args)]
pub(in crate::cli) struct StepsArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// The upper floor
    upper: String,
    /// The lower floor
    lower: String,
}

pub(in crate::cli) fn run(
    arguments: &StepsArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let found = specs_of(std::slice::from_ref(&arguments.spec), None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let mut outcome = if found.unusable.is_empty() { Outcome::Clean } else { Outcome::Unusable };
    for analysed in analysed(found.specs)? {
        let house = &analysed.snapshot.house;
        let (upper, lower) = (floor_named(house, &arguments.upper), floor_named(house, &arguments.lower));
        let (Some(upper), Some(lower)) = (upper, lower) else {
            outcome = Outcome::Unusable;
            continue;
        };
        if upper == lower {
            complain(&format!("`{}` is one floor: a step lies between two", arguments.upper));
            outcome = Outcome::Unusable;
            continue;
        }
        match step_divider::between(&house.model, &house.geometry, upper, lower) {
            Ok(step) => {
                let checked = analysed.checked();
                let n_errors = checked.count(Severity::Error);
                if n_errors > 0 {
                    writeln!(
                        out,
                        "{} has {}: settle them before anybody cuts from this (`storyrod lint` shows them)\n",
                        checked.name(),
                        counted(n_errors, "error")
                    )?;
                }
                report::write_steps(house, &step, palette, out)?;
            }
            Err(unknown) => {
                let name = unknown.of.and_then(|of| house.model.common(of)).map(|common| common.label());
                complain(&format!(
                    "the level of {} is not known: its `{}` is missing or can't be read",
                    name.unwrap_or_default(),
                    unknown.fact
                ));
                outcome = Outcome::Unusable;
            }
        }
    }
    Ok(outcome)
}

/// The floor of this name; without one, says what there is.
fn floor_named(house: &House, name: &str) -> Option<ElementId> {
    let floor = house.model.named(name).filter(|id| id.kind == ElementKind::Floor);
    if floor.is_none() {
        let names = house.model.floors.iter().map(|floor| &*floor.common.name);
        let hint = nearest(name, names).map(|near| format!("; did you mean `{near}`?")).unwrap_or_default();
        complain(&format!("there is no floor `{name}`{hint}"));
    }
    floor
}
