//! What Neovim reads besides what it shares with Vim: the queries of the tree-sitter grammar, looks of words.

use std::path::Path;

use storyrod::ide::Modifier;

use crate::holds;

fn committed(path: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

/// Neovim looks for words to spell where a query says so. What a word is to the server it is in the tree too, so that
/// nothing changes its colour when the server has read the file.
fn in_neovim(query: &str) -> String {
    let query = [
        (" @comment\n", " @comment @spell\n"),
        (" @string\n", " @string @spell\n"),
        (" @keyword.operator\n", " @operator\n"),
        (" @label\n", " @variable.parameter\n"),
    ]
    .iter()
    .fold(query.to_owned(), |query, (ours, neovims)| query.replace(ours, neovims));
    format!(
        "; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.\n\n{query}"
    )
}

#[test]
fn the_queries_are_those_of_the_grammar() {
    for name in ["folds", "highlights", "indents", "injections", "locals", "textobjects"] {
        let query = committed(&format!("grammar/tree-sitter/queries/{name}.scm"));
        holds(&format!("editors/neovim/queries/framing/{name}.scm"), &in_neovim(&query));
    }
}

/// Those of the protocol have looks in Neovim itself, or need none.
#[test]
fn every_modifier_of_our_own_has_a_look() {
    let looks = committed("editors/neovim/lua/storyrod/colours.lua");
    let protocols =
        [Modifier::Declaration, Modifier::Readonly, Modifier::Documentation, Modifier::Deprecated];
    let own = Modifier::ALL.into_iter().filter(|modifier| !protocols.contains(modifier));
    for modifier in own {
        assert!(looks.contains(&format!("\n  {} = {{", modifier.name())), "{} has a look", modifier.name());
    }
}
