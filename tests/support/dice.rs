//! Repeatable random choices: the same seed gives the same text on every machine.
#![allow(dead_code, reason = "each test takes the part it needs")]

/// A stream of random numbers: the generator published as SplitMix64 (Steele, Lea, Flood, "Fast splittable
/// pseudorandom number generators", OOPSLA 2014).
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number from `least` to `most`, both included.
    pub fn between(&mut self, least: i64, most: i64) -> i64 {
        let width = u64::try_from(most - least).unwrap() + 1;
        least + i64::try_from(self.next() % width).unwrap()
    }

    /// One of these.
    pub fn one_of<T: Copy>(&mut self, choices: &[T]) -> T {
        let last = i64::try_from(choices.len()).unwrap() - 1;
        choices[usize::try_from(self.between(0, last)).unwrap()]
    }

    /// True in one of `times` throws.
    pub fn once_in(&mut self, times: i64) -> bool {
        self.between(1, times) == 1
    }
}
