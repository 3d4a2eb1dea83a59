//! How far it is between two places, as the crow flies.

/// Mean radius of the earth, km (IUGG; Moritz, Geodetic Reference System 1980).
const EARTH_KM: f64 = 6371.0;
/// Kilometres in a mile (international mile, 1959).
const KM_PER_MILE: f64 = 1.609_344;

/// Returns the great-circle distance in miles between two places in degrees north and east, by the haversine formula
/// (R. W. Sinnott, "Virtues of the Haversine", Sky and Telescope 68 (2), 1984, p. 159). Degrees out of range are brought
/// back to it.
pub fn miles(from: (f64, f64), to: (f64, f64)) -> f64 {
    let radians = |(north, east): (f64, f64)| {
        (
            north.clamp(-90.0, 90.0).to_radians(),
            east.clamp(-180.0, 180.0).to_radians(),
        )
    };
    let ((north, east), (other_north, other_east)) = (radians(from), radians(to));
    let half = |difference: f64| (difference / 2.0).sin().powi(2);
    let hav = half(other_north - north) + north.cos() * other_north.cos() * half(other_east - east);
    2.0 * EARTH_KM * hav.clamp(0.0, 1.0).sqrt().asin() / KM_PER_MILE
}

/// Returns roughly how long a tow takes for a distance as the crow flies, min, to the next 5: roads are a fifth longer
/// than that (Ballou, Rahardja and Sakai, "Selected country circuity factors for road travel distance estimation",
/// Transportation Research A 36 (9), 2002, from memory: 1.20 for the USA), at 35 mph with lights and turns (common
/// practice, no source).
pub fn tow_minutes(miles: f64) -> f64 {
    const CIRCUITY: f64 = 1.2;
    const TOW_MPH: f64 = 35.0;
    (miles.max(0.0) * CIRCUITY / TOW_MPH * 60.0 / 5.0).ceil() * 5.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_published_distance_comes_out() {
        // Nashville (BNA) to Los Angeles (LAX): 2886.44444 km on a sphere of 6371.0 km, the worked example of the
        // Rosetta Code task "Haversine formula"
        let km = miles((36.12, -86.67), (33.94, -118.40)) * KM_PER_MILE;
        assert!((km - 2_886.444_442_8).abs() < 1e-3, "{km}");
    }

    #[test]
    fn odd_places_give_a_finite_distance() {
        for place in [(0.0, 0.0), (90.0, 180.0), (-90.0, -180.0), (1e9, -1e9)] {
            for other in [(0.0, 0.0), (0.0, 180.0), (45.0, -45.0)] {
                let far = miles(place, other);
                assert!(far.is_finite() && far <= 12_500.0, "{far}");
            }
        }
        // half the way round: pi times the radius
        assert!((miles((0.0, 0.0), (0.0, 180.0)) - 12_436.8).abs() < 0.1);
    }

    #[test]
    fn a_tow_is_told_to_the_next_five_minutes() {
        assert_eq!(tow_minutes(0.0), 0.0);
        assert_eq!(tow_minutes(1.0), 5.0);
        // 35 miles of road are an hour: 29.17 as the crow flies
        assert_eq!(tow_minutes(29.0), 60.0);
    }
}
