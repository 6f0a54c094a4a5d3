//! The words that an editor colours are the words of the vocabulary. `UPDATE=1 cargo test --test editors` writes them.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::path::Path;

use storyrod::syntax::vocabulary::{COMMON, ELEMENTS};

const NEOVIM: &str = "editors/neovim/syntax/framing.vim";

/// Words as a Vim pattern, the longest first, since the first that fits wins.
fn alternatives(words: &BTreeSet<&str>) -> String {
    let mut words: Vec<&str> = words.iter().copied().collect();
    words.sort_by_key(|word| (std::cmp::Reverse(word.len()), *word));
    words.join(r"\|").replace(' ', r"\s\+")
}

fn neovim() -> String {
    let elements = ELEMENTS.iter().flat_map(|spec| spec.also.iter().copied().chain([spec.keyword]));
    let facts = ELEMENTS.iter().flat_map(|spec| spec.facts).chain(COMMON).map(|fact| fact.phrase);
    format!(
        r#"" Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.
if exists('b:current_syntax')
  finish
endif

syntax match framingElement /^\%({elements}\)\>/
syntax match framingInclude /^include\>/
syntax match framingFact /^\s\+\zs\%({facts}\)\>/
syntax match framingNumber /\%(^\|[ ,#-]\)\@1<=\d[0-9.'"\/-]*\%(\s\d\+\/\d\+"\)\?/
syntax match framingText /\%(^\|\s\)\@1<="[^" \t][^"]*"/
syntax match framingComment /\%(^\|\s\)\@1<=--.*$/ contains=@Spell

highlight default link framingElement Statement
highlight default link framingInclude Include
highlight default link framingFact Identifier
highlight default link framingNumber Number
highlight default link framingText String
highlight default link framingComment Comment

let b:current_syntax = 'framing'
"#,
        elements = alternatives(&elements.collect()),
        facts = alternatives(&facts.collect()),
    )
}

#[test]
fn neovim_colours_the_words_of_the_vocabulary() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(NEOVIM);
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(&path, neovim()).unwrap();
    }
    let committed = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(committed == neovim(), "{NEOVIM} is stale: run `UPDATE=1 cargo test --test editors`");
}
