//! A case: what goes in, what must come out, how nearly, and who says so.

use std::collections::BTreeMap;

use toml::{Table, Value};

/// How sure a value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Read in a usable copy of the source named.
    Published,
    /// Read in a copy of low grade.
    LowGradeCopy,
    /// Worked out from the formulas of the source named.
    Derived,
    /// Independent solvers or hand arithmetic agree.
    Oracle,
    /// Remembered.
    FromMemory,
}

impl Kind {
    /// What the table of checked values calls it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Published => "published, confirmed",
            Self::LowGradeCopy => "read in a copy of low grade",
            Self::Derived => "derived",
            Self::Oracle => "independent computation",
            Self::FromMemory => "from memory",
        }
    }
}

/// One case of a file.
pub struct Case {
    /// Its identifier.
    pub id: String,
    /// How sure its values are.
    pub kind: Kind,
    /// Where they are from.
    source: String,
    inputs: Table,
    expected: Table,
    tolerance: Value,
}

/// The cases of a file.
pub fn all(text: &str) -> Vec<Case> {
    let mut file: Table = toml::from_str(text).unwrap();
    let Some(Value::Array(cases)) = file.remove("case") else { panic!("the file has no cases") };
    cases.into_iter().map(|case| Case::of(case.as_table().unwrap())).collect()
}

impl Case {
    fn of(table: &Table) -> Self {
        let text = |key: &str| table[key].as_str().unwrap().to_owned();
        let is_confirmed = table["confirmed"].as_bool().unwrap();
        let kind = match text("kind").as_str() {
            "published" if is_confirmed => Kind::Published,
            "published" => Kind::LowGradeCopy,
            "derived" => Kind::Derived,
            "oracle" => Kind::Oracle,
            "memory" => Kind::FromMemory,
            other => panic!("{}: unknown kind `{other}`", text("id")),
        };
        assert!(is_confirmed <= (kind == Kind::Published || kind == Kind::Oracle), "{}", text("id"));
        Self {
            id: text("id"),
            kind,
            source: text("source"),
            inputs: table["inputs"].as_table().unwrap().clone(),
            expected: table["expected"].as_table().unwrap().clone(),
            tolerance: table["tolerance"].clone(),
        }
    }

    /// An input that is a number.
    pub fn number(&self, key: &str) -> f64 {
        number_of(self.input(key)).unwrap_or_else(|| panic!("{}: `{key}` is no number", self.id))
    }

    /// An input that is a list of numbers.
    pub fn numbers(&self, key: &str) -> Vec<f64> {
        self.input(key).as_array().unwrap().iter().map(|value| number_of(value).unwrap()).collect()
    }

    /// The rows of an input that is a list of tables.
    pub fn rows(&self, key: &str) -> impl Iterator<Item = Row<'_>> {
        self.input(key).as_array().unwrap().iter().map(|row| Row(row.as_table().unwrap()))
    }

    /// An input that is text.
    pub fn words(&self, key: &str) -> &str {
        self.input(key).as_str().unwrap_or_else(|| panic!("{}: `{key}` is no text", self.id))
    }

    /// An input that is true or false.
    pub fn holds(&self, key: &str) -> bool {
        self.input(key).as_bool().unwrap_or_else(|| panic!("{}: `{key}` is neither true nor false", self.id))
    }

    /// True when it expects a value of this name.
    pub fn expects(&self, name: &str) -> bool {
        self.expected.contains_key(name)
    }

    /// True when the value of this name is true or false.
    pub fn expects_truth(&self, name: &str) -> bool {
        self.expected.get(name).is_some_and(Value::is_bool)
    }

    /// True when it has this input.
    pub fn has(&self, key: &str) -> bool {
        self.inputs.contains_key(key)
    }

    fn input(&self, key: &str) -> &Value {
        self.inputs.get(key).unwrap_or_else(|| panic!("{}: no input `{key}`", self.id))
    }

    /// How far a value may be off. A tolerance of the case goes by the value's name, by its unit, or for all; without one
    /// it is half a unit of the last digit given.
    fn may_be_off(&self, name: &str, expected: f64) -> f64 {
        let least = 1e-9 * expected.abs().max(1.0);
        let half_a_digit = || {
            let digits = expected.to_string();
            let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
            0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap())
        };
        let stated = match &self.tolerance {
            Value::String(words) => match words.split_whitespace().collect::<Vec<_>>().as_slice() {
                ["exact"] => 0.0,
                [percent, "%", rest @ ..] => {
                    let is_deflection = name.starts_with("defl");
                    let percent = match rest {
                        ["forces,", of_deflection, "%", "deflection"] if is_deflection => of_deflection,
                        _ => percent,
                    };
                    percent.parse::<f64>().unwrap() / 100.0 * expected.abs()
                }
                _ => panic!("{}: unknown tolerance `{words}`", self.id),
            },
            Value::Table(table) => {
                let unit = name.rsplit('_').next().unwrap();
                let by_name = [name, unit, "any"].iter().find_map(|key| number_of(table.get(*key)?));
                let relative = || Some(number_of(table.get("rel")?)? * expected.abs());
                by_name.or_else(relative).unwrap_or_else(half_a_digit)
            }
            other => panic!("{}: unknown tolerance {other}", self.id),
        };
        stated.max(least)
    }
}

fn number_of(value: &Value) -> Option<f64> {
    value.as_float().or_else(|| value.as_integer().map(|integer| integer as f64))
}

/// A row of an input that is a list of tables.
pub struct Row<'a>(&'a Table);

impl Row<'_> {
    /// A number of it.
    pub fn number(&self, key: &str) -> f64 {
        number_of(&self.0[key]).unwrap()
    }
}

/// What came out for a case.
#[derive(Default)]
pub struct Comparison {
    found: BTreeMap<&'static str, Found>,
}

enum Found {
    Number(f64),
    Numbers(Vec<f64>),
    Words(String),
    Truth(bool),
    Truths(Vec<bool>),
    NotHere(&'static str),
}

impl Comparison {
    /// Nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// A number.
    pub fn number(mut self, name: &'static str, found: f64) -> Self {
        self.found.insert(name, Found::Number(found));
        self
    }

    /// A list of numbers.
    pub fn numbers(mut self, name: &'static str, found: Vec<f64>) -> Self {
        self.found.insert(name, Found::Numbers(found));
        self
    }

    /// Text.
    pub fn words(mut self, name: &'static str, found: impl Into<String>) -> Self {
        self.found.insert(name, Found::Words(found.into()));
        self
    }

    /// Whether something is so.
    pub fn truth(mut self, name: &'static str, found: bool) -> Self {
        self.found.insert(name, Found::Truth(found));
        self
    }

    /// Whether each of several things is so.
    pub fn truths(mut self, name: &'static str, found: Vec<bool>) -> Self {
        self.found.insert(name, Found::Truths(found));
        self
    }

    /// A value that nothing here gives, and why.
    pub fn left_out(mut self, name: &'static str, why: &'static str) -> Self {
        self.found.insert(name, Found::NotHere(why));
        self
    }

    /// How many values were compared.
    pub fn compared(&self) -> usize {
        self.found.values().filter(|found| !matches!(found, Found::NotHere(_))).count()
    }

    /// Why values were left out.
    pub fn reasons(&self) -> impl Iterator<Item = &'static str> {
        self.found.values().filter_map(|found| match found {
            Found::NotHere(why) => Some(*why),
            Found::Number(_) | Found::Numbers(_) | Found::Words(_) | Found::Truth(_) | Found::Truths(_) => {
                None
            }
        })
    }

    /// Each expected value that was not met, and each that was not looked at.
    pub fn faults(&self, case: &Case) -> Vec<String> {
        let Case { id, source, expected, .. } = case;
        let mut faults: Vec<String> = expected
            .iter()
            .filter_map(|(name, value)| match self.found.get(name.as_str()) {
                None => Some(format!("{id}: nothing was compared with {name} = {value}")),
                Some(found) if found.meets(case, name, value) => None,
                Some(found) => Some(format!("{id}: {name} is {found}, not {value} ({source})")),
            })
            .collect();
        faults.extend(
            self.found
                .keys()
                .filter(|name| !expected.contains_key(**name))
                .map(|name| format!("{id}: nobody expects {name}")),
        );
        faults
    }
}

impl Found {
    fn meets(&self, case: &Case, name: &str, expected: &Value) -> bool {
        let near = |found: f64, expected: f64| (found - expected).abs() <= case.may_be_off(name, expected);
        match self {
            Self::Number(found) => number_of(expected).is_some_and(|expected| near(*found, expected)),
            Self::Numbers(found) => expected.as_array().is_some_and(|expected| {
                expected.len() == found.len()
                    && expected.iter().zip(found).all(|(expected, found)| {
                        number_of(expected).is_some_and(|expected| near(*found, expected))
                    })
            }),
            Self::Words(found) => expected.as_str() == Some(found),
            Self::Truth(found) => expected.as_bool() == Some(*found),
            Self::Truths(found) => expected.as_array().is_some_and(|expected| {
                expected.iter().map(Value::as_bool).eq(found.iter().copied().map(Some))
            }),
            Self::NotHere(_) => true,
        }
    }
}

impl std::fmt::Display for Found {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Number(found) => found.fmt(f),
            Self::Numbers(found) => write!(f, "{found:?}"),
            Self::Words(found) => found.fmt(f),
            Self::Truth(found) => found.fmt(f),
            Self::Truths(found) => write!(f, "{found:?}"),
            Self::NotHere(why) => f.write_str(why),
        }
    }
}
