//! The sheets that a person asks for: one text each, of one house, whoever asks.

use std::fmt;
use std::io::{self, Write};

use crate::diagnostic::Severity;
use crate::geometry::step_divider;
use crate::house::House;
use crate::model::element::ElementId;
use crate::report::{
    Checked, Palette, SheetForm, counted, write_calc, write_contributors, write_rod, write_rod_as_built,
    write_steps, write_takedown,
};
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::ElementKind;
use crate::text::nearest;

/// A sheet that a person asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sheet {
    /// What everything carries, or what makes up all that the element of this name carries.
    Takedown(Option<String>),
    /// The calculation sheet of everything, or of the element of this name.
    Calc(Option<String>, SheetForm),
    /// Every elevation from the footings up.
    Rod,
    /// The same with what was measured, and what follows from it.
    RodAsBuilt,
    /// How the step between the floors of these names divides into risers.
    Steps(String, String),
}

/// Why there is no sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoSheet {
    /// No element, or no floor, has the name; the nearest one that has.
    Unnamed(&'static str, String, Option<String>),
    /// Both floors are one.
    OneFloor(String),
    /// A level of this element isn't known, for want of this fact.
    NoLevel(String, &'static str),
}

impl fmt::Display for NoSheet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unnamed(kind, name, near) => {
                write!(f, "there is no {kind} `{name}`")?;
                near.iter().try_for_each(|near| write!(f, "; did you mean `{near}`?"))
            }
            Self::OneFloor(name) => write!(f, "`{name}` is one floor: a step lies between two"),
            Self::NoLevel(label, fact) => {
                write!(f, "the level of {label} is not known: its `{fact}` is missing or can't be read")
            }
        }
    }
}

impl Sheet {
    /// Its title: `takedown of C1`.
    pub fn title(&self) -> String {
        match self {
            Self::Takedown(None) => "takedown".to_owned(),
            Self::Takedown(Some(name)) => format!("takedown of {name}"),
            Self::Calc(None, _) => "calculation".to_owned(),
            Self::Calc(Some(name), _) => format!("calculation of {name}"),
            Self::Rod => "rod list".to_owned(),
            Self::RodAsBuilt => "rod list as built".to_owned(),
            Self::Steps(upper, lower) => format!("steps from {upper} to {lower}"),
        }
    }

    /// Writes the sheet of a house. When errors stand in it, the first line says so: nobody should rely on the rest.
    ///
    /// # Errors
    /// What the stream says; inside, why there is no such sheet of this house. Nothing is written then.
    pub fn write(
        &self,
        checked: &Checked<'_>,
        snapshot: &Snapshot,
        palette: Palette,
        out: &mut impl Write,
    ) -> io::Result<Result<(), NoSheet>> {
        let house = &snapshot.house;
        match self {
            Self::Takedown(name) | Self::Calc(name, _) => {
                let element = match name.as_deref().map(|name| element_named(house, name)).transpose() {
                    Ok(element) => element,
                    Err(why) => return Ok(Err(why)),
                };
                write_errors(checked, "anybody relies on these figures", out)?;
                match (self, element) {
                    (Self::Calc(_, form), _) => write_calc(house, element, *form, palette, out)?,
                    (_, Some(element)) => write_contributors(house, element, palette, out)?,
                    (_, None) => write_takedown(house, palette, out)?,
                }
            }
            Self::Rod => {
                write_errors(checked, "anybody builds from this list", out)?;
                write_rod(house, palette, out)?;
            }
            Self::RodAsBuilt => {
                write_errors(checked, "anybody builds from this list", out)?;
                write_rod_as_built(snapshot, palette, out)?;
            }
            Self::Steps(upper, lower) => {
                let step = match step_between(house, upper, lower) {
                    Ok(step) => step,
                    Err(why) => return Ok(Err(why)),
                };
                write_errors(checked, "anybody cuts from this", out)?;
                write_steps(house, &step, palette, out)?;
            }
        }
        Ok(Ok(()))
    }
}

fn write_errors(checked: &Checked<'_>, before: &str, out: &mut impl Write) -> io::Result<()> {
    match checked.count(Severity::Error) {
        0 => Ok(()),
        n => writeln!(
            out,
            "{} has {}: settle them before {before} (`storyrod lint` shows them)\n",
            checked.name(),
            counted(n, "error")
        ),
    }
}

fn step_between(house: &House, upper: &str, lower: &str) -> Result<step_divider::Step, NoSheet> {
    let (one, other) = (floor_named(house, upper)?, floor_named(house, lower)?);
    if one == other {
        return Err(NoSheet::OneFloor(upper.to_owned()));
    }
    step_divider::between(&house.model, &house.geometry, one, other).map_err(|unknown| {
        let label = unknown.of.and_then(|of| house.model.common(of)).map(|common| common.label());
        NoSheet::NoLevel(label.unwrap_or_default(), unknown.fact)
    })
}

fn element_named(house: &House, name: &str) -> Result<ElementId, NoSheet> {
    house.model.named(name).ok_or_else(|| {
        let names = house.model.commons().map(|common| &*common.name);
        NoSheet::Unnamed("element", name.to_owned(), nearest(name, names).map(str::to_owned))
    })
}

fn floor_named(house: &House, name: &str) -> Result<ElementId, NoSheet> {
    house.model.named(name).filter(|id| id.kind == ElementKind::Floor).ok_or_else(|| {
        let names = house.model.floors.iter().map(|floor| &*floor.common.name);
        NoSheet::Unnamed("floor", name.to_owned(), nearest(name, names).map(str::to_owned))
    })
}
