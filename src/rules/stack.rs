//! The vertical stack: levels that have to agree.

pub mod stack_does_not_close;
