//! Work on many things at once, with the results in the order of the things.

use std::io;
use std::num::NonZeroUsize;
use std::sync::mpsc::channel;
use std::sync::{Mutex, PoisonError};
use std::thread;

use clap::Args;

#[derive(Debug, Args)]
pub(in crate::cli) struct JobsArguments {
    /// So many specs are checked at once [default: `jobs` in storyrod.toml, else as many as there are cores]
    #[arg(long, value_name = "N")]
    jobs: Option<NonZeroUsize>,
}

impl JobsArguments {
    /// How many threads work: of the argument, else of the configuration.
    pub fn count(&self, configured: Option<NonZeroUsize>) -> usize {
        let cores = || thread::available_parallelism().map_or(1, NonZeroUsize::get);
        self.jobs.or(configured).map_or_else(cores, NonZeroUsize::get)
    }
}

/// What comes of each item. Each thread has a state of its own, which is the default at its start; `tell` hears on this
/// thread how many are done.
///
/// # Errors
/// What `tell` says, or the system when it starts no more threads.
pub(in crate::cli) fn in_parallel<Item: Send, Done: Send, State: Default>(
    items: Vec<Item>,
    jobs: usize,
    work: impl Fn(&mut State, Item) -> Done + Sync,
    mut tell: impl FnMut(usize) -> io::Result<()>,
) -> io::Result<Vec<Done>> {
    let mut all: Vec<Option<Done>> = items.iter().map(|_| None).collect();
    let jobs = jobs.min(items.len());
    let waiting = Mutex::new(items.into_iter().enumerate());
    let next = || waiting.lock().unwrap_or_else(PoisonError::into_inner).next();
    let (sender, receiver) = channel();
    thread::scope(|scope| {
        // Whatever ends this closure early takes the receiver along, and with it the threads.
        let receiver = receiver;
        for _ in 0..jobs {
            let (sender, next, work) = (sender.clone(), &next, &work);
            thread::Builder::new().spawn_scoped(scope, move || {
                let mut state = State::default();
                while let Some((at, item)) = next() {
                    if sender.send((at, work(&mut state, item))).is_err() {
                        return;
                    }
                }
            })?;
        }
        drop(sender);
        for (before, (at, done)) in receiver.iter().enumerate() {
            tell(before + 1)?;
            if let Some(slot) = all.get_mut(at) {
                *slot = Some(done);
            }
        }
        Ok(())
    })
    .map(|()| all.into_iter().flatten().collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_keep_the_order_however_many_work() {
        let items: Vec<u64> = (0..200).collect();
        let doubled: Vec<u64> = items.iter().map(|item| item * 2).collect();
        for jobs in [1, 3, 500] {
            let mut told = Vec::new();
            let work = |met: &mut u64, item: u64| {
                *met += 1;
                // The first ones take longest.
                (0..(200 - item) * 100).for_each(|turn| _ = std::hint::black_box(turn));
                item * 2
            };
            let done = in_parallel(items.clone(), jobs, work, |n| {
                told.push(n);
                Ok(())
            });
            assert_eq!(done.unwrap(), doubled);
            assert_eq!(told, (1..=200).collect::<Vec<_>>());
        }
        let nothing = in_parallel(Vec::<u8>::new(), 4, |(), item| item, |_| Ok(()));
        assert!(nothing.unwrap().is_empty());
    }

    #[test]
    fn one_that_hears_no_more_ends_the_work() {
        let failing = |n| if n < 3 { Ok(()) } else { Err(io::Error::other("closed")) };
        let ended = in_parallel((0..100).collect(), 4, |(), item: u8| item, failing);
        assert_eq!(ended.unwrap_err().to_string(), "closed");
    }
}
