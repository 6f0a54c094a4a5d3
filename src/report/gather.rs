//! The results of several shards as the one that a whole run writes, byte for byte.
//!
//! What is said of a spec is taken over as it stands; only what is said of the whole run is put together.

mod fault;
mod json;
mod junit;
mod sarif;

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::io::Write;

use serde::de::IgnoredAny;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

pub use crate::report::gather::fault::{GatherFault, Misread};

use crate::diagnostic::Severity;
use crate::report::Shard;

/// A file that one shard wrote.
#[derive(Clone, Debug)]
pub struct ShardResult {
    /// Its name.
    pub name: String,
    /// What it holds.
    pub text: String,
}

/// What was put together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    /// Something was found that is grave enough.
    pub is_found: bool,
    /// How many inputs could not be used.
    pub n_unusable: usize,
}

/// What a result says of the run that wrote it.
#[derive(Clone, Debug)]
struct Mark<'a> {
    version: Cow<'a, str>,
    changed_since: Option<Cow<'a, str>>,
    shard: ShardMark<'a>,
}

/// A shard as results name it.
#[derive(Clone, Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::report) struct ShardMark<'a> {
    number: u32,
    count: u32,
    #[serde(borrow)]
    day: Cow<'a, str>,
    #[serde(borrow)]
    level: Cow<'a, str>,
    #[serde(borrow)]
    asked: Cow<'a, str>,
}

/// Writes the one result that results of every shard of a run make up. They may come in any order; `fail_on` is the
/// severity from which a finding counts, as the shards were told without it.
///
/// # Errors
/// They don't belong together, one is missing, or what the stream says.
pub fn gather(
    results: &[ShardResult],
    fail_on: Option<Severity>,
    out: &mut impl Write,
) -> Result<Gathered, GatherFault> {
    let formats: Vec<Format> = results.iter().map(format_of).collect::<Result<_, _>>()?;
    let (Some(format), Some(first)) = (formats.first(), results.first()) else {
        return Err(GatherFault::Nothing);
    };
    if let Some((other, result)) = formats.iter().zip(results).find(|(other, _)| *other != format) {
        return Err(GatherFault::differ(first, result, "format", &[format.word(), other.word()]));
    }
    match format {
        Format::Json => {
            let (level, bodies) = belonging(results, fail_on, json::read)?;
            json::write(bodies, level, out)
        }
        Format::Sarif => {
            let (level, bodies) = belonging(results, fail_on, sarif::read)?;
            sarif::write(bodies, level, out)
        }
        Format::Junit => {
            let (level, bodies) = belonging(results, None, junit::read)?;
            match fail_on {
                Some(wanted) if wanted != level => Err(GatherFault::FixedLevel(level)),
                _ => junit::write(bodies, out),
            }
        }
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Format {
    Json,
    Sarif,
    Junit,
}

impl Format {
    fn word(self) -> &'static str {
        match self {
            Self::Json => "json",
            Self::Sarif => "sarif",
            Self::Junit => "junit",
        }
    }
}

fn format_of(result: &ShardResult) -> Result<Format, GatherFault> {
    #[derive(Deserialize)]
    struct Either {
        specs: Option<IgnoredAny>,
        runs: Option<IgnoredAny>,
    }
    let misread = |why| GatherFault::Misread { file: result.name.clone(), why };
    match result.text.trim_start().chars().next() {
        None => return Err(misread(Misread::Empty)),
        Some('<') => return Ok(Format::Junit),
        Some('{') => {}
        Some(_) => return Err(misread(Misread::OtherFormat)),
    }
    let either: Either = serde_json::from_str(&result.text).map_err(|error| misread(error.into()))?;
    match either {
        Either { specs: Some(_), .. } => Ok(Format::Json),
        Either { runs: Some(_), .. } => Ok(Format::Sarif),
        Either { .. } => Err(misread(Misread::OtherFormat)),
    }
}

type Read<'a, Body> = fn(&'a str) -> Result<(Mark<'a>, Body), Misread>;

/// The bodies in the order of their shards, when each shard is there once and all were told the same; and the severity
/// from which a finding counts.
fn belonging<'a, Body>(
    results: &'a [ShardResult],
    fail_on: Option<Severity>,
    read: Read<'a, Body>,
) -> Result<(Severity, Vec<Body>), GatherFault> {
    let mut known: Vec<(&ShardResult, Mark<'_>, Body)> = Vec::new();
    for result in results {
        let misread = |why| GatherFault::Misread { file: result.name.clone(), why };
        let (mark, body) = read(&result.text).map_err(misread)?;
        if mark.version != env!("CARGO_PKG_VERSION") {
            return Err(misread(Misread::OtherVersion(mark.version.into_owned())));
        }
        known.push((result, mark, body));
    }
    let Some((first, told, _)) = known.first() else { return Err(GatherFault::Nothing) };
    for (result, mark, _) in &known {
        let told_of = |mark: &Mark<'_>| {
            let since = mark.changed_since.clone().unwrap_or("the beginning".into()).into_owned();
            let ShardMark { count, day, level, asked, .. } = &mark.shard;
            [
                ("number of shards", count.to_string()),
                ("day of `--today`", day.to_string()),
                ("severity of `--fail-on`", level.to_string()),
                ("revision of `--changed-since`", since),
                ("mark of paths, `storyrod.toml`, baseline and commits", asked.to_string()),
            ]
        };
        let both = told_of(told).into_iter().zip(told_of(mark));
        for ((what, one), (_, other)) in both {
            if one != other {
                return Err(GatherFault::differ(first, result, what, &[&one, &other]));
            }
        }
    }
    let count = told.shard.count;
    let level = Severity::from_word(&told.shard.level).unwrap_or(Severity::Error);
    known.sort_by_key(|(_, mark, _)| mark.shard.number);
    for ((one, mark, _), (other, next, _)) in known.iter().zip(known.iter().skip(1)) {
        if mark.shard.number == next.shard.number {
            let files = [one.name.clone(), other.name.clone()];
            return Err(GatherFault::Twice { files, number: mark.shard.number, count });
        }
    }
    let numbers: BTreeSet<u32> = known.iter().map(|(_, mark, _)| mark.shard.number).collect();
    if let Some(number) = numbers.iter().find(|number| !(1..=count).contains(*number)) {
        let name = known.iter().find(|(_, mark, _)| mark.shard.number == *number).map(|(one, ..)| &one.name);
        let why = Misread::Damaged(format!("there is no shard {number} of {count}"));
        return Err(GatherFault::Misread { file: name.cloned().unwrap_or_default(), why });
    }
    // A damaged result may tell of more shards than there can be: none is listed that nobody reads.
    let n_missing = count.saturating_sub(u32::try_from(numbers.len()).unwrap_or(u32::MAX));
    if n_missing > 0 {
        let first = (1..=count).filter(|number| !numbers.contains(number)).take(GatherFault::MOST_NAMED);
        return Err(GatherFault::Missing { first: first.collect(), n_missing, count });
    }
    Ok((fail_on.unwrap_or(level), known.into_iter().map(|(_, _, body)| body).collect()))
}

/// Each text with what counts in it.
fn each_read<'a, Read: Deserialize<'a>>(
    texts: Vec<&'a RawValue>,
) -> Result<Vec<(Read, &'a RawValue)>, Misread> {
    texts.into_iter().map(|raw| Ok((serde_json::from_str(raw.get())?, raw))).collect()
}

impl From<Shard> for ShardMark<'static> {
    fn from(shard: Shard) -> Self {
        Self {
            number: shard.number,
            count: shard.count,
            day: shard.today.to_string().into(),
            level: shard.fail_on.word().into(),
            asked: shard.asked_word().into(),
        }
    }
}
