//! The day by which a command judges waivers.

use std::env;

use anyhow::anyhow;
use clap::Args;

use crate::syntax::value::Date;
use crate::workspace;

/// The variable by which a build that is to come out the same again says when it happens, in seconds since 1970.
const BUILD_TIME: &str = "SOURCE_DATE_EPOCH";

#[derive(Debug, Args)]
pub(in crate::cli) struct DayArguments {
    /// Judge waivers as on this day, YYYY-MM-DD; without it on the day of SOURCE_DATE_EPOCH (seconds since 1970, UTC),
    /// else today
    #[arg(long, value_name = "DATE", value_parser = day)]
    today: Option<Date>,
}

impl DayArguments {
    /// The day: of the argument, else of the build, else by the clock.
    ///
    /// # Errors
    /// The build's time is no number of seconds.
    pub fn day(&self) -> anyhow::Result<Date> {
        match (self.today, env::var_os(BUILD_TIME)) {
            (Some(day), _) => Ok(day),
            (None, None) => Ok(workspace::today()),
            (None, Some(written)) => written.to_str().and_then(workspace::day_of_seconds).ok_or_else(|| {
                anyhow!("{BUILD_TIME} is `{}`: a whole number of seconds is wanted", written.display())
            }),
        }
    }
}

fn day(written: &str) -> Result<Date, &'static str> {
    workspace::day_written(written).ok_or("a day of the calendar is wanted, written as 2027-06-01")
}
