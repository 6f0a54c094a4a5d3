//! Random members against `tests/data/continuous_members.json`: solved from the differential equations by collocation with
//! numpy and scipy (versions in the file's head), by `tests/oracle/continuous_members.py`.

use storyrod::statics::continuous::{Response, Unstable};
use storyrod::units::{Force, Length, Moment};

use crate::oracle_members::{inches, line_of, oracle, pushes_of};

/// Agreement to a share of the member's largest value of the kind: the digits that the oracle's rounding leaves.
const SHARE: f64 = 1e-8;

/// Half the exact unit of a length, and what the rounding of the oracle's file leaves.
const DROP: f64 = 3e-6;

#[test]
fn random_members_agree_with_the_oracle() {
    let members = oracle().members;
    assert!(members.len() >= 300);
    for (index, member) in members.iter().enumerate() {
        let expected = member.expected.as_ref().unwrap();
        let prepared = line_of(member).prepare().unwrap();
        let loaded = prepared.response(&pushes_of(member)).unwrap();
        let response = Response::sum(&[(1.0, &loaded), (1.0, &prepared.settling())]);
        let extremes = response.extremes();

        let force =
            expected.reactions.iter().fold(expected.shear[0], |most, reaction| most.max(reaction.abs()));
        // At the least a pound and a pound-inch: a member that only follows its supports is free of force.
        let force = force.max(1.0);
        let moment = expected.sagging[0].abs().max(expected.hogging[0].abs()).max(force);
        let drop = expected.down[0].abs().max(expected.up[0].abs());
        let close = |value: f64, expected: f64, scale: f64, what: &str| {
            assert!((value - expected).abs() <= scale, "member {index}, {what}: {value}, not {expected}");
        };
        let forces =
            |value: Force, expected: f64, what: &str| close(value.to_lb(), expected, SHARE * force, what);
        let moments = |value: Moment, expected: f64, what: &str| {
            close(value.to_lb_in(), expected, SHARE * moment, what)
        };
        let drops = |value: Length, expected: f64, what: &str| {
            close(value.to_inches(), expected, SHARE * drop + DROP, what);
        };

        assert_eq!(response.reactions.len(), expected.reactions.len());
        for (reaction, expected) in response.reactions.iter().zip(&expected.reactions) {
            forces(*reaction, *expected, "reaction");
        }
        for (couple, expected) in response.fixed_moments.iter().zip(&expected.fixed) {
            moments(*couple, *expected, "fixed moment");
        }
        for &[at, moment_there, shear_there, drop_there] in &expected.stations {
            let at = inches(at);
            moments(response.moment_at(at), moment_there, "moment at a station");
            forces(response.shear_at(at).0, shear_there, "shear at a station");
            drops(response.deflection_at(at), drop_there, "deflection at a station");
        }
        moments(extremes.sagging.0, expected.sagging[0], "sagging");
        moments(extremes.hogging.0, expected.hogging[0], "hogging");
        forces(extremes.shear.0.abs(), expected.shear[0], "shear");
        drops(extremes.down.0, expected.down[0].max(0.0), "down");
        drops(extremes.up.0, (-expected.up[0]).max(0.0), "up");

        // The value at the place that is named, on the worse side of it, is the extreme.
        let (left, right) = response.shear_at(extremes.shear.1);
        forces(left.abs().max(right.abs()), expected.shear[0], "shear at its place");
        if expected.down[0] > DROP {
            drops(response.deflection_at(extremes.down.1), expected.down[0], "deflection at its place");
        }
        if expected.up[0] < -DROP {
            drops(response.deflection_at(extremes.up.1), expected.up[0], "uplift at its place");
        }
    }
}

/// Which members have a part that moves freely: the oracle asked the singular values of its equations.
#[test]
fn random_members_stand_or_not_as_the_oracle_finds() {
    let members = oracle().loose;
    assert!(members.iter().filter(|member| member.is_loose).count() >= 25);
    assert!(members.iter().filter(|member| !member.is_loose).count() >= 25);
    for (index, member) in members.iter().enumerate() {
        let refused = match line_of(member).prepare() {
            Ok(_) => false,
            Err(Unstable::Mechanism { .. } | Unstable::NoSupport) => true,
            Err(other) => unreachable!("member {index}: {other}"),
        };
        assert_eq!(refused, member.is_loose, "member {index}");
    }
}
