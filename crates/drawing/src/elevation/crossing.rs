//! How the tube goes from one space into the next: through a wall, or through a slab.

/// A leg as far as the building is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Passage {
    pub(crate) space: usize,
    /// Steeper than 45 degrees.
    pub(crate) steep: bool,
    pub(crate) rises: bool,
}

/// What parts two spaces where the tube passes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Crossing {
    /// The same space goes on.
    None,
    Wall,
    /// A slab between floors.
    Slab {
        up: bool,
    },
}

/// For each leg but the first, what lies between it and the leg before.
pub(crate) fn crossings(legs: &[Passage]) -> Vec<Crossing> {
    legs.windows(2)
        .enumerate()
        .map(|(place, pair)| match pair {
            [before, after] if before.space != after.space => between(legs, place, *before, *after),
            _ => Crossing::None,
        })
        .collect()
}

/// The same with walls only, for a route whose floors can't be told apart.
pub(crate) fn walls_only(legs: &[Passage]) -> Vec<Crossing> {
    crossings(legs)
        .into_iter()
        .map(|crossing| match crossing {
            Crossing::None => Crossing::None,
            Crossing::Wall | Crossing::Slab { .. } => Crossing::Wall,
        })
        .collect()
}

fn between(legs: &[Passage], place: usize, before: Passage, after: Passage) -> Crossing {
    match (before.steep, after.steep) {
        (false, false) => Crossing::Wall,
        (false, true) if is_shaft(legs, place + 1) => Crossing::Wall,
        (true, false) if is_shaft(legs, place) => Crossing::Wall,
        (_, true) => Crossing::Slab { up: after.rises },
        (true, false) => Crossing::Slab { up: before.rises },
    }
}

/// A space that the tube only climbs through, entered and left on the level, is a shaft behind walls.
fn is_shaft(legs: &[Passage], place: usize) -> bool {
    let Some(space) = legs.get(place).map(|leg| leg.space) else {
        return false;
    };
    let stays = |leg: &&Passage| leg.space == space;
    let upwards = legs.iter().take(place).rev();
    let onwards = legs.iter().skip(place + 1);
    let before = upwards.clone().find(|leg| !stays(leg));
    let after = onwards.clone().find(|leg| !stays(leg));
    let climbs_only = upwards
        .take_while(stays)
        .chain(onwards.take_while(stays))
        .chain(legs.get(place))
        .all(|leg| leg.steep);
    let enters_level = before.is_some_and(|leg| !leg.steep);
    let leaves_level = after.is_some_and(|leg| !leg.steep);
    climbs_only && enters_level && leaves_level
}

#[cfg(test)]
mod tests {
    use super::*;

    fn flat(space: usize) -> Passage {
        Passage {
            space,
            steep: false,
            rises: false,
        }
    }

    fn riser(space: usize) -> Passage {
        Passage {
            space,
            steep: true,
            rises: true,
        }
    }

    fn drop(space: usize) -> Passage {
        Passage {
            space,
            steep: true,
            rises: false,
        }
    }

    #[track_caller]
    fn check(legs: &[Passage], expected: &[Crossing]) {
        assert_eq!(crossings(legs), expected, "between {legs:?}");
    }

    #[test]
    fn level_tube_meets_walls() {
        check(
            &[flat(0), flat(1), flat(1), flat(2), drop(2)],
            &[
                Crossing::Wall,
                Crossing::None,
                Crossing::Wall,
                Crossing::None,
            ],
        );
    }

    #[test]
    fn tube_through_a_loft_meets_slabs() {
        check(
            &[riser(0), riser(1), flat(1), flat(1), drop(2)],
            &[
                Crossing::Slab { up: true },
                Crossing::None,
                Crossing::None,
                Crossing::Slab { up: false },
            ],
        );
    }

    #[test]
    fn shaft_lies_behind_walls() {
        check(
            &[flat(0), drop(1), flat(2)],
            &[Crossing::Wall, Crossing::Wall],
        );
    }
}
