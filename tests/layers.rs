//! The tree is the architecture: every module uses only what the table in DEVELOPERS.md allows.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use proc_macro2::{TokenStream, TokenTree};
use syn::visit::Visit;

/// The modules of the crate and what each may use, itself included.
type Layers = BTreeMap<String, BTreeSet<String>>;

const BEGIN: &str = "<!-- layers: begin -->";
const END: &str = "<!-- layers: end -->";

#[test]
fn every_module_uses_only_what_its_layer_allows() {
    let layers = layers(include_str!("../DEVELOPERS.md"));
    let faults: Vec<_> = sources()
        .iter()
        .filter_map(|path| Some((path, layer_of(path)?)))
        .flat_map(|(path, layer)| {
            let allowed =
                layers.get(&layer).unwrap_or_else(|| panic!("DEVELOPERS.md has no layer for `{layer}`"));
            let used = paths_in(path).modules;
            let refused = used.into_iter().filter(|module| !allowed.contains(module));
            refused
                .map(|module| format!("{}: `{layer}` may not use `{module}`", path.display()))
                .collect::<Vec<_>>()
        })
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_table_names_the_modules_that_exist() {
    let layers = layers(include_str!("../DEVELOPERS.md"));
    let in_table: BTreeSet<_> = layers.keys().cloned().collect();
    let in_tree: BTreeSet<_> = sources().iter().filter_map(|path| layer_of(path)).collect();
    assert_eq!(in_table, in_tree);
}

#[test]
fn super_stands_in_tests_only() {
    let faults: Vec<_> = sources().into_iter().filter(|path| paths_in(path).has_super).collect();
    assert!(faults.is_empty(), "write `crate::…` instead of `super::…`: {faults:?}");
}

#[test]
fn every_file_says_what_it_is_for() {
    let has_doc = |path: &PathBuf| std::fs::read_to_string(path).unwrap().starts_with("//! ");
    let faults: Vec<_> = sources().into_iter().filter(|path| !has_doc(path)).collect();
    assert!(faults.is_empty(), "no `//!` on the first line: {faults:?}");
}

#[test]
fn no_file_is_a_mod_rs_or_a_drawer_for_everything() {
    let refused = ["mod", "utils", "util", "helpers", "common", "misc", "core", "manager"];
    let is_refused = |path: &PathBuf| refused.contains(&path.file_stem().unwrap().to_str().unwrap());
    let faults: Vec<_> = sources().into_iter().filter(is_refused).collect();
    assert!(faults.is_empty(), "say what the file is about: {faults:?}");
}

#[test]
fn a_path_is_seen_wherever_it_hides() {
    let uses = |text: &str| {
        let mut paths = Paths::default();
        paths.visit_file(&syn::parse_file(text).unwrap());
        (paths.modules.into_iter().collect::<Vec<_>>().join(" "), paths.has_super)
    };
    assert_eq!(
        uses("use crate::{text::{Span, FileId}, units, model as m};"),
        ("model text units".to_owned(), false)
    );
    assert_eq!(uses("fn f() -> crate::a::B { vec![crate::c::d()] }"), ("a c".to_owned(), false));
    assert_eq!(uses("macro_rules! m { () => { $crate::e::F } }"), ("e".to_owned(), false));
    assert_eq!(uses("mod tests { use super::*; use crate::testing::check; }"), (String::new(), false));
    assert_eq!(uses("fn f() { super::g() }"), (String::new(), true));
    assert_eq!(uses("pub(super) fn f() {}"), (String::new(), false));
}

/// What a file's code refers to, its tests aside.
#[derive(Default)]
struct Paths {
    modules: BTreeSet<String>,
    has_super: bool,
}

impl Paths {
    fn take(&mut self, first: &str, second: Option<String>) {
        match first {
            "crate" => self.modules.extend(second),
            "super" => self.has_super = true,
            _ => {}
        }
    }

    fn take_tokens(&mut self, tokens: TokenStream) {
        let tokens: Vec<_> = tokens.into_iter().collect();
        for (at, token) in tokens.iter().enumerate() {
            match token {
                TokenTree::Group(group) => self.take_tokens(group.stream()),
                // The word, two colons, the module.
                TokenTree::Ident(first) => match tokens.get(at + 3) {
                    Some(TokenTree::Ident(second)) if tokens[at + 1].to_string() == ":" => {
                        self.take(&first.to_string(), Some(second.to_string()));
                    }
                    _ => {}
                },
                TokenTree::Punct(_) | TokenTree::Literal(_) => {}
            }
        }
    }

    fn take_tree(&mut self, tree: &syn::UseTree) {
        let syn::UseTree::Path(path) = tree else { return };
        match &*path.tree {
            syn::UseTree::Group(group) => {
                group.items.iter().for_each(|item| self.take(&path.ident.to_string(), first_of(item)));
            }
            other => self.take(&path.ident.to_string(), first_of(other)),
        }
    }
}

impl<'ast> Visit<'ast> for Paths {
    fn visit_item_mod(&mut self, module: &'ast syn::ItemMod) {
        if module.ident != "tests" {
            syn::visit::visit_item_mod(self, module);
        }
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        self.take_tree(&item.tree);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        let mut segments = path.segments.iter().map(|segment| segment.ident.to_string());
        if let Some(first) = segments.next() {
            self.take(&first, segments.next());
        }
        syn::visit::visit_path(self, path);
    }

    /// `pub(super)` says who may see an item; it uses nothing.
    fn visit_vis_restricted(&mut self, _: &'ast syn::VisRestricted) {}

    fn visit_macro(&mut self, invocation: &'ast syn::Macro) {
        self.take_tokens(invocation.tokens.clone());
        syn::visit::visit_macro(self, invocation);
    }
}

fn first_of(tree: &syn::UseTree) -> Option<String> {
    match tree {
        syn::UseTree::Path(path) => Some(path.ident.to_string()),
        syn::UseTree::Name(name) => Some(name.ident.to_string()),
        syn::UseTree::Rename(rename) => Some(rename.ident.to_string()),
        syn::UseTree::Glob(_) | syn::UseTree::Group(_) => None,
    }
}

fn paths_in(path: &Path) -> Paths {
    let file = syn::parse_file(&std::fs::read_to_string(path).unwrap()).unwrap();
    let mut paths = Paths::default();
    paths.visit_file(&file);
    paths
}

/// The module of the crate that a file belongs to; none for the crate's own two files.
fn layer_of(path: &Path) -> Option<String> {
    let first = path.strip_prefix(source_folder()).unwrap().components().next().unwrap();
    let name = Path::new(first.as_os_str()).file_stem().unwrap().to_str().unwrap().to_owned();
    // Helpers of tests are no layer: the crate is built without them.
    (!["lib", "main", "testing"].contains(&name.as_str())).then_some(name)
}

fn source_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

fn sources() -> Vec<PathBuf> {
    let mut files = Vec::new();
    let mut folders = vec![source_folder()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            match path.is_dir() {
                true => folders.push(path),
                false if path.extension().is_some_and(|extension| extension == "rs") => files.push(path),
                false => {}
            }
        }
    }
    files.sort();
    files
}

/// The table between the markers: `| module, module | what they may use |`.
fn layers(document: &str) -> Layers {
    let table = document
        .split(BEGIN)
        .nth(1)
        .and_then(|rest| rest.split(END).next())
        .expect("markers round the table");
    let mut layers = Layers::new();
    for row in table.lines().filter(|line| line.starts_with("| `")) {
        let cells: Vec<_> = row.split('|').map(str::trim).collect();
        let above: BTreeSet<String> = layers.keys().cloned().collect();
        let mut allowed = names_in(cells[2]);
        match cells[2].split_once("everything above") {
            Some((_, but)) => {
                let left_out = names_in(but);
                allowed = above.into_iter().filter(|module| !left_out.contains(module)).collect();
            }
            None => assert!(allowed.is_subset(&above), "a row names only rows above it: {row}"),
        }
        for module in names_in(cells[1]) {
            let own = allowed.iter().cloned().chain([module.clone()]).collect();
            assert!(layers.insert(module, own).is_none(), "a module has one row: {row}");
        }
    }
    layers
}

/// The words between back-quotes.
fn names_in(cell: &str) -> BTreeSet<String> {
    cell.split('`').skip(1).step_by(2).map(str::to_owned).collect()
}
