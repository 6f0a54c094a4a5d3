//! What presses on the head of a column, where, and what that does to it: load, and moment from what lies off its axis.

use crate::design::loads::Combination;
use crate::geometry::bearing;
use crate::geometry::plan_contacts::BESIDE;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Column};
use crate::model::plan::Axis;
use crate::statics::action::Source;
use crate::statics::cases::ByCase;
use crate::statics::member_line::MemberLine;
use crate::statics::pattern;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length, Moment};
use crate::verify::Known;
use crate::verify::demands;

/// One thing that lies on a column.
#[derive(Clone, Debug, PartialEq)]
pub struct Landing {
    /// What.
    pub from: ElementId,
    /// How far off the column's axis it presses, east and north positive.
    pub arm: [Length; 2],
    /// What does not move about: all but floor live load.
    pub steady: ByCase<Force>,
    /// The least and the most floor live load, as its spans are loaded.
    pub live: (Force, Force),
}

/// One combination of load on a column, with live load on some of what lies on it.
#[derive(Clone, Debug, PartialEq)]
pub struct HeadLoad {
    /// The combination.
    pub combination: &'static Combination,
    /// Where live load lies, when not everywhere.
    pub pattern: Option<Box<str>>,
    /// P.
    pub load: Force,
    /// ΣR·a, of the arms east and of the arms north.
    pub moment: [Moment; 2],
    /// Each landing's share, in their order.
    pub shares: Vec<Force>,
}

/// What lies on a column. Each end of a beam has its arm; whatever else it carries presses in its axis.
pub fn landings(known: &Known<'_>, column: &Column) -> Vec<Landing> {
    let mut found: Vec<Landing> = Vec::new();
    let mut beams: Vec<ElementId> = Vec::new();
    for action in known.forces.on(column.common.id) {
        match action.source {
            Source::From(beam) if beam.kind == ElementKind::Beam => {
                if !beams.contains(&beam) {
                    beams.push(beam);
                    found.extend(of_beam(known, column, beam));
                }
            }
            Source::From(_) | Source::Weight | Source::AreaOf(_) | Source::Declared(_) | Source::Load(_) => {
                let from = match action.source {
                    Source::From(from) | Source::AreaOf(from) | Source::Load(from) => from,
                    Source::Weight | Source::Declared(_) => column.common.id,
                };
                let is_first = found.iter().all(|landing| landing.from != from);
                let beyond =
                    if is_first { known.forces.partial.from_to(from, column.common.id) } else { Force::ZERO };
                let total = action.acting.total();
                found.push(Landing {
                    from,
                    arm: [Length::ZERO; 2],
                    steady: ByCase { live: Force::ZERO, ..total },
                    live: (total.live, total.live + beyond),
                });
            }
        }
    }
    found
}

fn of_beam(known: &Known<'_>, column: &Column, from: ElementId) -> Vec<Landing> {
    let Some(beam) = known.model.beam(from) else { return Vec::new() };
    let mut found = Vec::new();
    for line in known.forces.lines_of(from) {
        for (seat, on) in line.seats.iter().enumerate() {
            if on.on.element() != Some(column.common.id) {
                continue;
            }
            let total = line.reaction(seat);
            found.push(Landing {
                from,
                arm: arm_of(known, column, beam, line, seat),
                steady: ByCase { live: Force::ZERO, ..total },
                live: live_on(line, seat),
            });
        }
    }
    found
}

/// The least and the most that a seat has of the floor live load.
fn live_on(line: &MemberLine, seat: usize) -> (Force, Force) {
    let direct = line.direct.get(seat).map_or(Force::ZERO, |force| force.live);
    let whole = line.reaction(seat).live;
    let (mut least, mut most) = (Force::ZERO, whole);
    if let Ok(patterned) = pattern::patterns(&line.prepared, &line.pushes.live) {
        for reaction in patterned.patterns.iter().filter_map(|pattern| pattern.response.reactions.get(seat)) {
            least = least.min(*reaction);
            most = most.max(*reaction + direct);
        }
    }
    (least, most)
}

/// From the column's axis to the middle of what a piece lies on. A piece that runs on over the column presses in the
/// middle of its seat, one that ends there in the middle of its own length of the cap.
fn arm_of(known: &Known<'_>, column: &Column, beam: &Beam, line: &MemberLine, seat: usize) -> [Length; 2] {
    let (Some(centre), Some(at)) = (column.at.value(), line.seats.get(seat)) else {
        return [Length::ZERO; 2];
    };
    let is_joint = beam.joints.iter().any(|joint| joint.over.target == Some(column.common.id));
    let (is_first, is_last) = (seat == 0, seat + 1 == line.seats.len());
    let length = line.prepared.length();
    let place = at.station - line.begins;
    let support = beam.supports.get(at.support);
    let contact = support.and_then(|support| bearing::of_beam(known.model, beam, support).ok());
    let begins_here = is_first && place == Length::ZERO;
    let ends_here = is_last && place == length;
    let ends = beam.from.value().map(|from| from.on(line.axis));
    let middle = match (contact, ends) {
        (Some(contact), _) if is_joint && begins_here => at.handed_at + contact.of_each.half(),
        (Some(contact), _) if is_joint && ends_here => at.handed_at - contact.of_each.half(),
        (Some(contact), Some((low, _))) if begins_here && low > at.strip.0 => {
            (low + at.strip.1.min(low + contact.length)).half()
        }
        (Some(contact), Some((_, high))) if ends_here && high < at.strip.1 => {
            (high + at.strip.0.max(high - contact.length)).half()
        }
        _ => at.handed_at,
    };
    let (along, across) = (middle - centre.on(line.axis), line.across - centre.on(line.axis.across()));
    if along.abs().max(across.abs()) > BESIDE {
        // It misses the column: that is another fault.
        return [Length::ZERO; 2];
    }
    match line.axis {
        Axis::X => [along, across],
        Axis::Y => [across, along],
    }
}

/// Every combination, with all live load, and with that alone which pushes the column to one side.
pub fn head_loads(landings: &[Landing]) -> Vec<HeadLoad> {
    let all = landings.iter().fold(ByCase::<Force>::default(), |sum, landing| {
        sum + landing.steady + ByCase { live: landing.live.1, ..ByCase::default() }
    });
    let mut found = Vec::new();
    for combination in demands::combinations(demands::acting(&all)) {
        let mut arrangements = vec![vec![true; landings.len()]];
        if combination.live > 0.0 {
            for (axis, sign) in [(0, 1.0), (0, -1.0), (1, 1.0), (1, -1.0)] {
                let pushes = |landing: &Landing| {
                    landing.arm.get(axis).is_none_or(|arm| arm.to_inches() * sign >= -SAME_PLACE)
                };
                arrangements.push(landings.iter().map(pushes).collect());
            }
            arrangements.sort_by_key(|arrangement| std::cmp::Reverse(arrangement.clone()));
            arrangements.dedup();
        }
        found.extend(arrangements.iter().map(|arrangement| head_load(combination, landings, arrangement)));
    }
    found
}

/// Arms that differ by less, in inches, are one place.
const SAME_PLACE: f64 = 1e-3;

fn head_load(combination: &'static Combination, landings: &[Landing], arrangement: &[bool]) -> HeadLoad {
    let shares: Vec<Force> = landings
        .iter()
        .zip(arrangement)
        .map(|(landing, is_loaded)| {
            let live = if *is_loaded { landing.live.1 } else { landing.live.0 };
            demands::combined(combination, &landing.steady) + live * combination.live
        })
        .collect();
    let about = |axis: usize| -> Moment {
        let arms = landings.iter().map(|landing| landing.arm.get(axis).copied().unwrap_or_default());
        shares.iter().zip(arms).map(|(share, arm)| *share * arm).sum()
    };
    let is_everywhere = arrangement.iter().all(|is_loaded| *is_loaded);
    HeadLoad {
        combination,
        pattern: (!is_everywhere).then(|| "live load on one side of the cap only".into()),
        load: shares.iter().copied().sum(),
        moment: [about(0), about(1)],
        shares,
    }
}
