//! Does the output have colours.

use std::io::{self, IsTerminal};

use clap::ValueEnum;

use crate::report::Palette;

/// When the output has colours.
#[derive(Clone, Copy, Debug, Default, ValueEnum)]
pub(in crate::cli) enum ColourChoice {
    /// On a terminal that can show them.
    #[default]
    Auto,
    Always,
    Never,
}

/// The palette for standard output.
pub(in crate::cli) fn palette(choice: ColourChoice) -> Palette {
    let is_set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    let is_plain_terminal = std::env::var_os("TERM").is_some_and(|terminal| terminal == "dumb");
    match choice {
        ColourChoice::Always => Palette::Colour,
        ColourChoice::Never => Palette::Plain,
        ColourChoice::Auto if is_set("NO_COLOR") || is_plain_terminal => Palette::Plain,
        ColourChoice::Auto if io::stdout().is_terminal() => Palette::Colour,
        ColourChoice::Auto => Palette::Plain,
    }
}
