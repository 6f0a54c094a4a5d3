//! Tests: what the vocabulary's examples say arrives in the model.

use std::collections::BTreeMap;

use crate::model::Model;
use crate::model::problem::{ModelProblem, ModelProblemKind};
use crate::syntax::value::Value;
use crate::syntax::vocabulary::{ELEMENTS, ElementKind, ElementSpec, Naming};
use crate::syntax::{Tree, parse_fresh};
use crate::text::FileId;

/// A house's lines, in whole and in odd lengths.
const GRID: &str = "grid
  x   A 0', B 17'-9\", C 35'-6\"
  y   1 0', 2 14'-0\", 3 28'-0\"
";

#[test]
fn every_element_s_example_makes_sense() {
    for spec in ELEMENTS {
        let (model, problems) = lowered(spec.kind, spec.example);
        assert!(problems.is_empty(), "{}: {problems:#?}", spec.example);
        assert!(!format!("{model:?}").contains("Broken("), "{}: {model:#?}", spec.example);
    }
}

#[test]
fn every_fact_s_example_makes_sense_and_arrives() {
    for spec in ELEMENTS {
        for fact in spec.all_facts() {
            let text = format!("{}\n  {}\n", heading(spec), fact.example);
            let (model, problems) = lowered(spec.kind, &text);
            let problems: Vec<_> = problems
                .iter()
                .filter(|problem| !matches!(problem.kind, ModelProblemKind::FactMissing(_)))
                .collect();
            assert!(problems.is_empty(), "{text}: {problems:#?}");
            let model = format!("{model:?}");
            assert!(!model.contains("Broken("), "{text}: {model}");
            for (label, value) in values_of(&parse_fresh(&text)) {
                let is_kept_otherwise = matches!((fact.phrase, label), ("line", _) | ("sheathed", "side"));
                assert!(is_kept_otherwise || model.contains(&value), "{text}: `{label}` is lost: {value}");
            }
        }
    }
}

fn heading(spec: &ElementSpec) -> String {
    match spec.naming {
        Naming::Name => format!("{} Own", spec.keyword),
        Naming::Title => format!("{} \"Own\"", spec.keyword),
        Naming::None => spec.keyword.to_owned(),
    }
}

/// The model of an example, whose names are given to elements of fitting kinds in a second file, and what is told of
/// the example.
fn lowered(kind: ElementKind, example: &str) -> (Model, Vec<ModelProblem>) {
    let mut house = String::new();
    if kind != ElementKind::Project {
        house.push_str("project \"House\"\n  status  drawn\n");
    }
    if kind != ElementKind::Grid {
        house.push_str(GRID);
    }
    let alone = Model::of(&[parse_fresh(example), parse_fresh(&house)]);
    let mut wanted: BTreeMap<&str, Vec<ElementKind>> = BTreeMap::new();
    for problem in &alone.problems {
        let (name, kinds): (_, &[ElementKind]) = match &problem.kind {
            ModelProblemKind::UnknownName(kinds, _) => (place(example, problem), kinds),
            ModelProblemKind::UnknownSize(_) => (place(example, problem), &[ElementKind::Product]),
            _ => continue,
        };
        wanted
            .entry(name)
            .and_modify(|known| known.retain(|kind| kinds.contains(kind)))
            .or_insert(kinds.to_vec());
    }
    for (name, kinds) in wanted {
        house.push_str(&format!("{} {name}\n", kinds[0].word()));
    }
    let model = Model::of(&[parse_fresh(example), parse_fresh(&house)]);
    let told = |problem: &&ModelProblem| problem.span.file == FileId(0);
    let problems = model.problems.iter().filter(told).cloned().collect();
    (model, problems)
}

fn place<'t>(text: &'t str, problem: &ModelProblem) -> &'t str {
    &text[problem.span.start as usize..problem.span.end as usize]
}

/// The lengths, loads, days, names and texts of a tree, as the model prints them.
fn values_of(tree: &Tree) -> Vec<(&'static str, String)> {
    let facts = tree.chunks.iter().flat_map(|chunk| &chunk.body.facts);
    let parts = facts.flat_map(|fact| &fact.parts);
    let mut values = Vec::new();
    for part in parts {
        match &part.value {
            Value::Length(length) => values.push((part.label, format!("{length:?}"))),
            Value::Dimensions(lengths) => {
                values.extend(lengths.iter().map(|length| (part.label, format!("{length:?}"))));
            }
            Value::Load(load) => {
                let printed = format!("{load:?}");
                let number = printed.rsplit('(').next().unwrap().trim_end_matches(')');
                values.push((part.label, number.to_owned()));
            }
            Value::Stress(stress) => values.push((part.label, format!("{stress:?}"))),
            Value::Date(date) => values.push((part.label, format!("{date:?}"))),
            Value::Side(side) => values.push((part.label, format!("{side:?}"))),
            Value::Text(text) | Value::Name(text) => values.push((part.label, format!("{text:?}"))),
            _ => {}
        }
    }
    values
}
