//! Results as JSON.

use std::io::Write;
use std::mem;

use serde::Deserialize;
use serde_json::value::RawValue;

use crate::diagnostic::Severity;
use crate::report::gather::{GatherFault, Gathered, Mark, Misread, each_read};
use crate::report::json::{Output, SCHEMA};
use crate::report::order::place_in_order;

/// The result of a shard: each spec and each input that could not be used as it is written, behind what counts in it.
pub(super) struct Body<'a> {
    output: Output<'a, &'a RawValue, &'a RawValue>,
    specs: Vec<(Spec, &'a RawValue)>,
    unusable: Vec<(Unusable, &'a RawValue)>,
}

#[derive(Deserialize)]
struct Spec {
    file: String,
    counts: Counts,
}

#[derive(Deserialize)]
struct Counts {
    error: usize,
    warning: usize,
    advice: usize,
}

#[derive(Deserialize)]
struct Unusable {
    file: String,
}

pub(super) fn read(text: &str) -> Result<(Mark<'_>, Body<'_>), Misread> {
    let mut output: Output<'_, &RawValue, &RawValue> = serde_json::from_str(text)?;
    let shard = output.shard.take().ok_or(Misread::Whole)?;
    if output.schema != SCHEMA {
        return Err(Misread::Damaged(format!("schema {} is not {SCHEMA}", output.schema)));
    }
    let mark = Mark { version: output.version.clone(), changed_since: output.changed_since.clone(), shard };
    let specs = each_read(mem::take(&mut output.specs))?;
    let unusable = each_read(mem::take(&mut output.unusable))?;
    Ok((mark, Body { output, specs, unusable }))
}

pub(super) fn write(
    bodies: Vec<Body<'_>>,
    level: Severity,
    out: &mut impl Write,
) -> Result<Gathered, GatherFault> {
    let mut whole: Option<Body<'_>> = None;
    for body in bodies {
        match &mut whole {
            None => whole = Some(body),
            Some(whole) => {
                whole.specs.extend(body.specs);
                whole.unusable.extend(body.unusable);
            }
        }
    }
    let Some(Body { mut output, mut specs, mut unusable }) = whole else { return Err(GatherFault::Nothing) };
    specs.sort_by_cached_key(|(spec, _)| place_in_order(&spec.file));
    unusable.sort_by_cached_key(|(unusable, _)| place_in_order(&unusable.file));
    let gathered = Gathered {
        is_found: specs.iter().any(|(spec, _)| spec.counts.reach(level)),
        n_unusable: unusable.len(),
    };
    output.specs = specs.into_iter().map(|(_, raw)| raw).collect();
    output.unusable = unusable.into_iter().map(|(_, raw)| raw).collect();
    output.write(out)?;
    Ok(gathered)
}

impl Counts {
    /// True when there is a finding that is at least so grave.
    fn reach(&self, level: Severity) -> bool {
        let count = |severity| match severity {
            Severity::Error => self.error,
            Severity::Warning => self.warning,
            Severity::Advice => self.advice,
        };
        Severity::ALL.into_iter().any(|severity| severity >= level && count(severity) > 0)
    }
}
