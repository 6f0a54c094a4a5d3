//! What the editors know of the format is the vocabulary's: grammars and word lists are rendered from it and compared
//! with what is committed. `UPDATE=1 cargo test --test editors` writes them.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test fails by panicking")]

#[path = "../support/analysis.rs"]
mod analysis;
#[path = "../support/damage.rs"]
mod damage;
#[path = "../support/dice.rs"]
mod dice;
mod emacs;
mod helix;
mod kate;
mod neovim;
mod protocol_page;
#[path = "../support/random_specs.rs"]
mod random_specs;
mod snippets;
mod textmate;
mod tree_sitter;
mod vim;
mod vscode;

use std::path::Path;

/// Fails unless the file at `path` is `rendered`; under `UPDATE` it is written first.
fn holds(path: &str, rendered: &str) {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    if std::env::var_os("UPDATE").is_some() {
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(&file, rendered).unwrap();
    }
    let committed = std::fs::read_to_string(&file).unwrap_or_default();
    assert!(committed == rendered, "{path} is stale: run `UPDATE=1 cargo test --test editors`");
}

/// The longest first: where the first that fits wins, `steps down` must stand before `steps`.
fn longest_first(phrases: impl IntoIterator<Item = &'static str>) -> Vec<&'static str> {
    let mut phrases: Vec<_> = phrases.into_iter().collect();
    phrases.sort_by_key(|phrase| (std::cmp::Reverse(phrase.len()), *phrase));
    phrases.dedup();
    phrases
}
