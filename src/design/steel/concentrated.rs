//! Webs under point loads and over supports: AISC 360 J10.

use crate::design::NotCovered;
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::WideFlange;
use crate::design::steel::{Strength, inches, modulus_over_yield};
use crate::units::{Force, Length, Stress};

/// The part of a W shape that a force across it loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadedWeb {
    /// d, over both flanges.
    pub depth: Length,
    /// tf.
    pub flange: Length,
    /// tw.
    pub web: Length,
    /// k, from the outer face of a flange to the toe of its fillet, for design.
    pub fillet: Length,
}

impl From<&WideFlange> for LoadedWeb {
    fn from(section: &WideFlange) -> Self {
        let WideFlange { depth, flange, web, fillet, .. } = *section;
        Self { depth, flange, web, fillet }
    }
}

/// A force across a web without stiffeners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WebStrength {
    /// Local yielding (J10.2).
    pub yielding: Strength<Force>,
    /// Local crippling (J10.3).
    pub crippling: Strength<Force>,
}

impl WebStrength {
    /// What service loads may use of it.
    pub fn allowable(self) -> Force {
        self.yielding.allowable().min(self.crippling.allowable())
    }

    /// The share of a service load that stiffeners at it have to carry (J10.8); none when the web carries it alone.
    pub fn stiffener_force(self, force: Force) -> Option<Force> {
        let is_carried = force <= self.allowable();
        (!is_carried).then(|| force - self.allowable())
    }
}

/// A web under a force that presses on its flange over `bearing`, at `from_end` from the end of the beam.
///
/// Source: AISC 360-16, -22 §J10.2, §J10.3.
/// Range:  as [`yielding`] and [`crippling`]. Sidesway of a web (J10.4) is not here: both flanges are held at the force.
/// A beam end that is not held against rolling over has full-depth stiffeners whatever the force (J10.7).
/// Result: force.
pub fn web(
    web: LoadedWeb,
    yield_strength: Stress,
    bearing: Length,
    from_end: Length,
) -> Result<WebStrength, NotCovered> {
    Ok(WebStrength {
        yielding: yielding(web, yield_strength, bearing, from_end)?,
        crippling: crippling(web, yield_strength, bearing, from_end)?,
    })
}

/// The web yields where the force spreads into it.
///
/// Source: AISC 360-16, -22 §J10.2, Eq. J10-2; Eq. J10-3 of a force within d of the end as in the handbook, p. 5.55.
/// Range:  0 < lb; k <= lb within d of the end.
/// Result: force, Ω 1.50.
pub fn yielding(
    web: LoadedWeb,
    yield_strength: Stress,
    bearing: Length,
    from_end: Length,
) -> Result<Strength<Force>, NotCovered> {
    const CLAUSE: &str = "AISC 360 J10.2";
    modulus_over_yield(yield_strength, CLAUSE)?;
    for (quantity, length) in [("tw", web.web), ("k", web.fillet), ("d", web.depth), ("lb", bearing)] {
        inches(quantity, length, CLAUSE)?;
    }
    let spread = if from_end > web.depth {
        web.fillet.scaled(5.0)
    } else if bearing < web.fillet {
        let limit = web.fillet;
        return Err(NotCovered::LengthOutOfRange { quantity: "lb", value: bearing, limit, clause: CLAUSE });
    } else {
        web.fillet.scaled(2.5)
    };
    let nominal = yield_strength * ((spread + bearing) * web.web);
    Ok(Strength { nominal, safety_factor: 1.50, resistance_factor: 1.00 })
}

/// The web crumples below the force.
///
/// Source: AISC 360-16, -22 §J10.3, Eq. J10-4; Eq. J10-5a, J10-5b of a force within d/2 of the end from memory.
/// Range:  0 < lb.
/// Result: force, Ω 2.00.
pub fn crippling(
    web: LoadedWeb,
    yield_strength: Stress,
    bearing: Length,
    from_end: Length,
) -> Result<Strength<Force>, NotCovered> {
    const CLAUSE: &str = "AISC 360 J10.3";
    modulus_over_yield(yield_strength, CLAUSE)?;
    let length = inches("lb", bearing, CLAUSE)? / inches("d", web.depth, CLAUSE)?;
    let thickness = inches("tw", web.web, CLAUSE)? / inches("tf", web.flange, CLAUSE)?;
    let restraint = thickness.powf(1.5);
    let (factor, spread) = if from_end >= web.depth.half() {
        (0.80, 3.0 * length)
    } else if length <= 0.2 {
        (0.40, 3.0 * length)
    } else {
        (0.40, 4.0 * length - 0.2)
    };
    let stress = Stress::ksi((ELASTIC_MODULUS.to_ksi() * yield_strength.to_ksi() / thickness).sqrt());
    let nominal = stress * (web.web * web.web) * (factor * (1.0 + spread * restraint));
    Ok(Strength { nominal, safety_factor: 2.00, resistance_factor: 0.75 })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// W8x24 of the AISC shapes database v15.0.
    const WEB: LoadedWeb = LoadedWeb {
        depth: Length::hundredths(793),
        flange: Length::hundredths(40),
        web: Length::decimal_inches(0.245),
        fillet: Length::decimal_inches(0.794),
    };
    const FY: Stress = Stress::ksi(50.0);

    fn at(bearing: Length, from_end: Length) -> Result<WebStrength, NotCovered> {
        web(WEB, FY, bearing, from_end)
    }

    /// By hand: interior 50 x 0.245 x (5 x 0.794 + 4) = 97.6 kip; at the end 50 x 0.245 x (2.5 x 0.794 + 4) = 73.3 kip.
    /// lb/d = 0.504, (tw/tf)^1.5 = 0.479, sqrt(29,000 x 50 x 0.4/0.245) = 1,539: interior 0.80 x 0.0600 x 1.725 x 1,539 =
    /// 127.5; at the end 0.40 x 0.0600 x (1 + 1.818 x 0.479) x 1,539 = 69.1 kip. The end equation of crippling is from memory.
    #[test]
    fn by_hand() {
        let interior = at(Length::inches(4), Length::feet(5)).unwrap();
        assert!((interior.yielding.nominal.to_kip() - 97.6).abs() < 0.1);
        assert!((interior.crippling.nominal.to_kip() - 127.5).abs() < 0.3);
        let end = at(Length::inches(4), Length::inches(2)).unwrap();
        assert!((end.yielding.nominal.to_kip() - 73.3).abs() < 0.1);
        assert!((end.crippling.nominal.to_kip() - 69.1).abs() < 0.2);
        assert!((end.allowable().to_kip() - 34.55).abs() < 0.1);
    }

    #[test]
    fn a_stiffener_carries_what_the_web_does_not() {
        let end = at(Length::inches(4), Length::inches(2)).unwrap();
        assert_eq!(end.stiffener_force(end.allowable()), None);
        let excess = end.stiffener_force(end.allowable() + Force::kip(3.0)).unwrap();
        assert!((excess.to_kip() - 3.0).abs() < 1e-9);
        assert!(end.stiffener_force(Force::kip(f64::NAN)).is_some());
    }

    /// The clauses change at d and at d/2 from the end, and at lb/d = 0.2, where Eq. J10-5a and J10-5b meet: 3 x 0.2 = 0.6
    /// = 4 x 0.2 - 0.2.
    #[test]
    fn where_the_clauses_change() {
        let bearing = Length::inches(2);
        let grows = Length::from_units(1);
        let yields = |from_end| yielding(WEB, FY, bearing, from_end).unwrap().nominal;
        assert!(yields(WEB.depth) < yields(WEB.depth + grows));
        let cripples = |from_end| crippling(WEB, FY, bearing, from_end).unwrap().nominal;
        assert!(cripples(WEB.depth.half() - grows) < cripples(WEB.depth.half()));
        let at_end = |bearing| crippling(WEB, FY, bearing, Length::ZERO).unwrap().nominal;
        let (below, above) = (at_end(WEB.depth.scaled(0.2)), at_end(WEB.depth.scaled(0.2) + grows));
        assert!((above / below - 1.0).abs() < 1e-4);
    }

    #[test]
    fn an_end_bearing_is_at_least_as_long_as_the_fillet_is_deep() {
        assert!(yielding(WEB, FY, WEB.fillet, Length::ZERO).is_ok());
        assert!(yielding(WEB, FY, WEB.fillet - Length::from_units(1), Length::ZERO).is_err());
        assert!(yielding(WEB, FY, Length::inches(1).half(), Length::feet(4)).is_ok());
        assert!(at(Length::ZERO, Length::feet(4)).is_err());
        assert!(web(WEB, Stress::ksi(f64::NAN), Length::inches(4), Length::feet(4)).is_err());
    }
}
