//! A file as one line for each fact, for tools that compare lines.

use std::io::{self, Write};

use crate::compare::{FactLine, NothingDerived, Said, fact_lines, nothing_derived};
use crate::house::House;
use crate::report::change::fact_words;
use crate::report::printable;

/// Writes a line for each fact of the only file of a house, its element before it. What follows from the text is marked,
/// and what can't be read.
///
/// # Errors
/// What the stream says.
pub fn write_facts(house: &House, out: &mut impl Write) -> io::Result<()> {
    let lines = fact_lines(house);
    for FactLine { element, said } in &lines {
        let columns = match said {
            Said::There(None) => [element.clone(), String::new(), String::new(), String::new()],
            Said::There(Some(title)) => {
                [element.clone(), format!("\"{title}\""), String::new(), String::new()]
            }
            Said::Stated(phrase, behind) => [element.clone(), phrase.clone(), behind.clone(), String::new()],
            Said::NotRead(written) => {
                [element.clone(), written.clone(), String::new(), "(not read)".to_owned()]
            }
            Said::Derived(key, value) => {
                [element.clone(), fact_words(key), value.to_string(), "(derived)".to_owned()]
            }
        };
        let told: Vec<String> = columns.into_iter().filter(|column| !column.is_empty()).collect();
        writeln!(out, "{}", printable(&told.join("  ")))?;
    }
    match nothing_derived(house) {
        // An empty file has nothing at all.
        _ if lines.is_empty() => Ok(()),
        Some(NothingDerived::Includes) => {
            writeln!(out, "no derived facts: they need the included files, and a file is read by itself here")
        }
        Some(NothingDerived::Part) => writeln!(out, "no derived facts: no project opens in this file"),
        None => Ok(()),
    }
}
