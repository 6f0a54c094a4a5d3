//! `textDocument/codeLens`. Every lens comes whole: what takes time is worked out for all of them at once, so there is
//! nothing left to resolve.

use serde_json::json;
use tower_lsp::lsp_types::{CodeLens, Command};

use crate::ide::{self, Lens, LensAction};
use crate::server::view::View;

/// The figures above the elements of a file; none when the person wants none.
pub fn lenses(view: &View) -> Option<Vec<CodeLens>> {
    if !view.preferences.code_lens {
        return None;
    }
    let house = &view.house;
    let lenses = ide::lenses(house.snapshot(), house.file).into_iter();
    Some(lenses.map(|lens| encoded(view, lens)).collect())
}

fn encoded(view: &View, lens: Lens) -> CodeLens {
    let uri = &view.page.uri;
    let (command, argument) = match lens.action {
        LensAction::Takedown(element) => ("storyrod.takedown", json!({"uri": uri, "element": element})),
        LensAction::Calculation(element) => ("storyrod.calc", json!({"uri": uri, "element": element})),
        LensAction::Steps { upper, lower } => {
            ("storyrod.steps", json!({"uri": uri, "upper": upper, "lower": lower}))
        }
        LensAction::Rod => ("storyrod.rod", json!({"uri": uri})),
    };
    CodeLens {
        range: view.range(lens.span.start, lens.span.end),
        command: Some(Command::new(lens.text, command.to_owned(), Some(vec![argument]))),
        data: None,
    }
}
