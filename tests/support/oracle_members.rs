//! The random members of `tests/data/continuous_members.json`, made and solved by `tests/oracle/continuous_members.py`.

use serde::Deserialize;
use storyrod::statics::continuous::{Hold, Line, Prop, Push, Stretch};
use storyrod::units::{FlexuralRigidity, Force, Length, LineLoad, Moment, SpringRate};

#[derive(Deserialize)]
pub struct Oracle {
    pub members: Vec<Member>,
    pub loose: Vec<Member>,
}

#[derive(Deserialize)]
pub struct Member {
    pub length: f64,
    pub stretches: Vec<Stiffness>,
    pub props: Vec<Support>,
    pub hinges: Vec<f64>,
    pub pushes: Vec<Load>,
    pub expected: Option<Expected>,
    #[serde(default)]
    pub is_loose: bool,
}

#[derive(Deserialize)]
pub struct Stiffness {
    pub to: f64,
    pub rigidity: f64,
    pub shear: Option<f64>,
}

#[derive(Deserialize)]
pub struct Support {
    pub at: f64,
    pub hold: String,
    pub rate: Option<f64>,
    pub settlement: f64,
}

#[derive(Deserialize)]
#[serde(untagged)]
pub enum Load {
    Spread { from: f64, to: f64, start: f64, end: f64 },
    Point { at: f64, force: f64 },
    Couple { at: f64, moment: f64 },
}

#[derive(Deserialize)]
pub struct Expected {
    pub reactions: Vec<f64>,
    pub fixed: Vec<f64>,
    /// Place, moment, shear, deflection.
    pub stations: Vec<[f64; 4]>,
    pub sagging: [f64; 2],
    pub hogging: [f64; 2],
    pub shear: [f64; 2],
    pub down: [f64; 2],
    pub up: [f64; 2],
}

pub fn oracle() -> Oracle {
    serde_json::from_str(include_str!("../data/continuous_members.json")).unwrap()
}

pub fn inches(value: f64) -> Length {
    Length::decimal_inches(value)
}

pub fn line_of(member: &Member) -> Line {
    Line {
        length: inches(member.length),
        stretches: member
            .stretches
            .iter()
            .map(|stretch| Stretch {
                to: inches(stretch.to),
                rigidity: FlexuralRigidity::lb_in2(stretch.rigidity),
                shear_rigidity: stretch.shear.map(Force::lb),
            })
            .collect(),
        props: member
            .props
            .iter()
            .map(|support| Prop {
                at: inches(support.at),
                hold: match (support.hold.as_str(), support.rate) {
                    ("spring", Some(rate)) => Hold::Spring(SpringRate::lb_per_in(rate)),
                    ("fixed", None) => Hold::Fixed,
                    ("pinned", None) => Hold::Pinned,
                    other => unreachable!("{other:?}"),
                },
                settlement: inches(support.settlement),
            })
            .collect(),
        hinges: member.hinges.iter().copied().map(inches).collect(),
    }
}

pub fn pushes_of(member: &Member) -> Vec<Push> {
    let push = |load: &Load| match *load {
        Load::Spread { from, to, start, end } => Push::Spread {
            from: inches(from),
            to: inches(to),
            start: LineLoad::plf(start),
            end: LineLoad::plf(end),
        },
        Load::Point { at, force } => Push::Point { at: inches(at), force: Force::lb(force) },
        Load::Couple { at, moment } => Push::Couple { at: inches(at), moment: Moment::lb_in(moment) },
    };
    member.pushes.iter().map(push).collect()
}
