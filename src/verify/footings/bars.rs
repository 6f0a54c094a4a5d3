//! The bars of a pad, and whether they are enough where the pad relies on them.

use crate::design::NotCovered;
use crate::design::concrete::bars::{Bar, numbered};
use crate::design::concrete::development::{Placing, by_cover, embedment, simple};
use crate::design::concrete::footing_bars::{
    Face, Layer, effective_depth, least_clear_spacing, least_cover, least_steel, spacing, widest_spacing,
};
use crate::model::foundation::Footing;
use crate::units::{Area, Length, Stress};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::footings::Worst;
use crate::verify::footings::ground::Concrete;
use crate::verify::quantity::Quantity;

/// Bars laid both ways at the bottom of a pad.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Their size.
    pub bar: Bar,
    /// How many each way.
    pub count: u32,
    /// Concrete below them and at their ends.
    pub cover: Length,
    /// fy.
    pub yield_strength: Stress,
    /// What nobody stated.
    pub assumed: Vec<Box<str>>,
}

/// Yield strength where no line states it, because the format has no word for it: Grade 60, common practice.
const GRADE_60: Stress = Stress::psi(60_000.0);

/// The bars of a pad; nothing for a plain one.
pub fn of(footing: &Footing) -> Option<Result<Laid, NotVerified>> {
    let no_rule = |what, clause| Err(NotVerified::NotCovered(NotCovered::NoRule { what, clause }));
    if footing.common.may_say("bars") {
        return Some(Err(NotVerified::Missing(footing.common.id, "bars")));
    }
    let laid = match footing.bars.as_slice() {
        [] => return None,
        [only] => only.value,
        _ => return Some(no_rule("a pad with several layers of bars", "designed by itself")),
    };
    if !laid.is_each_way {
        return Some(no_rule("a pad with bars one way", "ACI 318 13.3.3"));
    }
    let Some(bar) = numbered(laid.number) else {
        return Some(no_rule("a bar of this number", "ASTM A615 table 1, #3 to #11"));
    };
    let mut assumed: Vec<Box<str>> = vec!["bars of grade 60".into()];
    let cover = laid.cover.unwrap_or_else(|| {
        let cover = least_cover(Face::AgainstEarth, bar);
        assumed.push(format!("cover {cover}").into());
        cover
    });
    Some(Ok(Laid { bar, count: laid.count, cover, yield_strength: GRADE_60, assumed }))
}

/// How bars of a section lie, how long they must be and how long they are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// Their area.
    pub steel: Area,
    /// The length that holds their whole strength.
    pub development: Length,
    /// The length there is past the cut.
    pub embedment: Length,
    /// The share of their strength that they are held for.
    pub share: f64,
}

impl Laid {
    /// From the top of the pad to the middle of the upper layer: the shallower one, because no line says which way it lies.
    pub fn upper_depth(&self, thickness: Length) -> Result<Length, NotVerified> {
        Ok(effective_depth(thickness, self.cover, self.bar, Layer::Upper)?)
    }

    /// The mean of the two layers, for punching.
    pub fn mean_depth(&self, thickness: Length) -> Result<Length, NotVerified> {
        let lower = effective_depth(thickness, self.cover, self.bar, Layer::Lower)?;
        Ok((lower + self.upper_depth(thickness)?).half())
    }

    /// All the bars one way.
    pub fn steel(&self) -> Area {
        self.bar.area * f64::from(self.count)
    }

    /// How far apart they lie across a width, middle to middle.
    pub fn spacing(&self, width: Length) -> Result<Length, NotVerified> {
        Ok(spacing(width, self.cover, self.bar, self.count)?)
    }

    /// How the bars across a width are held that reach past a cut.
    pub fn held(&self, concrete: &Concrete, width: Length, reach: Length) -> Result<Held, NotVerified> {
        let placing = Placing {
            clear_spacing: self.spacing(width)? - self.bar.diameter,
            cover: self.cover,
            concrete_below: self.cover,
        };
        let by = |rule: fn(_, _, _, _, _) -> _| {
            rule(concrete.code, self.bar, concrete.strength, self.yield_strength, placing)
        };
        let development = by(simple)?.length.min(by(by_cover)?.length);
        let embedment = embedment(reach, self.cover);
        let share = (embedment / development).clamp(0.0, 1.0);
        Ok(Held { steel: self.steel(), development, embedment, share })
    }

    /// Least steel, spacing and cover: whichever is furthest from what the code asks.
    pub fn check(
        &self,
        concrete: &Concrete,
        sides: [Length; 2],
        thickness: Length,
    ) -> Result<Check, NotVerified> {
        let widest = widest_spacing(thickness);
        let clear = least_clear_spacing(self.bar);
        let cover = least_cover(Face::AgainstEarth, self.bar);
        let [one, other] = sides;
        let least = least_steel(concrete.code, self.yield_strength, one.max(other), thickness)?;
        let (wide, narrow) = (self.spacing(one.max(other))?, self.spacing(one.min(other))?);
        let steps = vec![
            Step::read("As", self.steel(), "the bars one way"),
            Step::read("As,min", least, "ACI 318 7.6.1.1"),
            Step::read("s", wide, "middle to middle"),
            Step::read("s,max", widest, "ACI 318 7.7.2.3, from memory"),
            Step::read("cover", self.cover, ""),
            Step::read("cover,min", cover, "IRC R403.1.3.5.3"),
        ];
        let pairs: [(Quantity, Quantity, &'static str); 4] = [
            (least.into(), self.steel().into(), "ACI 318 7.6.1.1, least steel"),
            (wide.into(), widest.into(), "ACI 318 7.7.2.3, widest spacing"),
            (clear.into(), (narrow - self.bar.diameter).into(), "ACI 318 25.2.1, clear spacing"),
            (cover.into(), self.cover.into(), "IRC R403.1.3.5.3, cover"),
        ];
        let mut worst = Worst::default();
        for (demand, capacity, clause) in pairs {
            worst.take(Ok(Check {
                demand,
                capacity,
                combination: "any load",
                pattern: None,
                at: None,
                clause,
                steps: steps.clone(),
                assumed: self.assumed.clone(),
            }));
        }
        worst.outcome().unwrap_or(Err(NotVerified::NoForces("no bars".into())))
    }
}
