//! `storyrod gather`: one result of what the shards of a run wrote.

use std::fs;
use std::io::Write;
use std::path::PathBuf;

use anyhow::{Context, anyhow};
use clap::Args;

use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::report::{self, GatherFault, ShardResult, counted};

#[derive(Debug, Args)]
pub(in crate::cli) struct GatherArguments {
    /// What `lint --shard` wrote, once for each shard, all as json, all as sarif or all as junit
    #[arg(required = true, value_name = "RESULT")]
    results: Vec<PathBuf>,
    /// Exit with 1 when a finding is at least this grave; without it as the shards were told
    #[arg(long, value_enum, value_name = "SEVERITY")]
    fail_on: Option<Severity>,
}

pub(in crate::cli) fn run(arguments: &GatherArguments, out: &mut impl Write) -> anyhow::Result<Outcome> {
    let mut results = Vec::new();
    for path in &arguments.results {
        let name = path.display().to_string();
        let text = fs::read_to_string(path).with_context(|| name.clone())?;
        results.push(ShardResult { name, text });
    }
    let gathered = report::gather(&results, arguments.fail_on, out).map_err(|fault| match fault {
        GatherFault::Stream(error) => error.into(),
        fault => anyhow!(fault),
    })?;
    if gathered.n_unusable > 0 {
        complain(&format!("{} not usable: the result names each", counted(gathered.n_unusable, "input")));
    }
    Ok(match gathered {
        _ if gathered.n_unusable > 0 => Outcome::Unusable,
        _ if gathered.is_found => Outcome::Found,
        _ => Outcome::Clean,
    })
}
