//! `workspace/executeCommand`: sheets of a house, as text.

use serde::Deserialize;
use serde_json::Value;
use tower_lsp::lsp_types::{ExecuteCommandParams, Url};

use crate::report::{Checked, Palette, Sheet, SheetForm};
use crate::server::view::{HouseView, View};
use crate::snapshot::Snapshot;

/// The commands, by the name that a client calls them.
pub const COMMANDS: [&str; 4] = ["storyrod.takedown", "storyrod.calc", "storyrod.rod", "storyrod.steps"];

/// A sheet that a client asks for.
#[derive(Debug)]
pub struct Wanted {
    /// A file of the house.
    pub uri: Url,
    /// The sheet.
    pub sheet: Sheet,
}

/// What the one argument of every command holds.
#[derive(Deserialize)]
struct Argument {
    uri: Url,
    element: Option<String>,
    upper: Option<String>,
    lower: Option<String>,
}

impl Wanted {
    /// The sheet that a command asks for.
    ///
    /// # Errors
    /// What is wrong with the command, as a sentence.
    pub fn of(params: ExecuteCommandParams) -> Result<Self, String> {
        let argument = params.arguments.into_iter().next().unwrap_or(Value::Null);
        let Argument { uri, element, upper, lower } = Argument::deserialize(argument).map_err(|fault| {
            format!("{} takes one argument, {{\"uri\": …, \"element\": …}}: {fault}", params.command)
        })?;
        let sheet = match (params.command.as_str(), upper, lower) {
            ("storyrod.takedown", ..) => Sheet::Takedown(element),
            ("storyrod.calc", ..) => Sheet::Calc(element, SheetForm::Text),
            ("storyrod.rod", ..) => Sheet::Rod,
            ("storyrod.steps", Some(upper), Some(lower)) => Sheet::Steps(upper, lower),
            ("storyrod.steps", ..) => {
                return Err("storyrod.steps wants the names of two floors, `upper` and `lower`".to_owned());
            }
            (unknown, ..) => return Err(format!("there is no command `{unknown}`")),
        };
        Ok(Self { uri, sheet })
    }
}

/// The text of a sheet: of the first house of the file that has it.
///
/// # Errors
/// Why the first house has no such sheet, as a sentence.
pub fn text_of(sheet: &Sheet, view: &View) -> Result<String, String> {
    let mut texts = view.houses().map(|house| text_in(sheet, house));
    let first = texts.next().unwrap_or_else(|| Err(String::new()));
    first.or_else(|why| texts.find_map(Result::ok).ok_or(why))
}

fn text_in(sheet: &Sheet, house: &HouseView) -> Result<String, String> {
    let spec = &house.analysed.spec;
    let sources = &spec.inputs.sources;
    let names: Vec<_> = sources.iter().map(|source| source.name.to_string()).collect();
    let Snapshot { findings, waived, .. } = house.snapshot();
    let checked = Checked { sources, names: &names, is_alone: spec.is_alone, findings, waived, n_known: 0 };
    let mut text = Vec::new();
    match sheet.write(&checked, house.snapshot(), Palette::Plain, &mut text) {
        Ok(Ok(())) => Ok(String::from_utf8_lossy(&text).into_owned()),
        Ok(Err(why)) => Err(why.to_string()),
        Err(fault) => Err(fault.to_string()),
    }
}
