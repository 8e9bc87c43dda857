//! What an ensemble says, under any weights of its members.

use dewrun_advice::{Spread, weighted_shares};

use crate::gathered::Gathered;
use crate::member::Member;
use crate::plan::Plan;
use crate::quantity::Quantity;
use crate::span::Origin;

/// An assumed value decides where it makes so much of a spread by itself; common practice, no source.
const DECIDES: f64 = 0.1;
/// So many of them are named.
const NAMED: usize = 3;
/// With fewer members, parts of a spread are noise, and none are told.
const ENOUGH: usize = 128;

/// What an ensemble says.
#[derive(Debug, Clone, PartialEq)]
pub struct EnsembleTold {
    /// Members that have an answer.
    pub members: usize,
    /// Members that have none.
    pub unanswered: usize,
    /// How many members of equal weight would know as much.
    pub worth: f64,
    /// Share of the members that are wet in some hour, or have mist at the sensor.
    pub wet: f64,
    /// Share of the members that are blind in some hour; none where it is not known.
    pub blind: Option<f64>,
    /// What their years come to.
    pub quantities: Vec<QuantityTold>,
    /// What they are made of, span by span.
    pub inputs: Vec<InputTold>,
    /// Share of the members that are wet at each place of the intake and of the exhaust, a decimetre from one to the next.
    pub wet_along: [Vec<f64>; 2],
}

/// The doubt of one number of a year.
#[derive(Debug, Clone, PartialEq)]
pub struct QuantityTold {
    /// Which.
    pub quantity: Quantity,
    /// Between what four of five members lie.
    pub spread: Spread,
    /// How far an end of it lies from that of the first half of the members, as a part of its width; none where it has no width.
    pub moved: Option<f64>,
    /// What makes the spread, the largest part first; empty where members are too few to tell.
    pub shares: Vec<SpanShare>,
}

/// A part of a spread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpanShare {
    /// Position of the span in the plan.
    pub span: usize,
    /// The part that it alone makes, 0 to 1.
    pub share: f64,
}

/// What is left of a span.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InputTold {
    /// Of all members alike.
    pub before: Spread,
    /// Under the weights.
    pub after: Spread,
}

/// What an ensemble says under weights of its members, in the order of [`Gathered::members`]; none says that all count alike. Nothing where there is no member.
///
/// # Range
/// Weights of zero and above, at least one above zero.
/// # Accuracy
/// With 256 members an end of a spread of water lies off that of ever more members by some 1 to 4 % of its width, one of hours by 1 to 8 %; in the quadratic mean over sequences, in three years.
/// Farther, by 5 to 12 %, lies that of hours beyond the airflow limits, of which most members have none and a few have many; and by 17 % the lower end of wet hours that are nearly all of a year's, in a spread of some days.
/// # Source
/// See [`Spread::weighted`] and [`weighted_shares`].
#[must_use]
pub fn told(plan: &Plan, gathered: &Gathered, weights: Option<&[f64]>) -> Option<EnsembleTold> {
    let members: Vec<&Member> = gathered.members().collect();
    let alike = vec![1.0; members.len()];
    let weights = weights.unwrap_or(&alike);
    let all: f64 = weights.iter().sum();
    if all <= 0.0 {
        return None;
    }
    let share = |holds: &dyn Fn(&Member) -> Option<bool>| -> Option<f64> {
        let mut sum = 0.0;
        for (member, weight) in members.iter().zip(weights) {
            sum += if holds(member)? { *weight } else { 0.0 };
        }
        Some(sum / all)
    };
    let is_any = |member: &Member, quantity| Some(0.0 < member.totals.get(quantity)?);
    let halves = gathered.is_of_first_half();
    let told_of = |quantity| of_quantity(&members, weights, &halves, quantity);
    Some(EnsembleTold {
        members: members.len(),
        unanswered: gathered.unanswered(),
        worth: worth(weights),
        wet: share(&|member| {
            Some(is_any(member, Quantity::WetHours)? || is_any(member, Quantity::MistHours)?)
        })?,
        blind: share(&|member| is_any(member, Quantity::BlindHours)),
        quantities: Quantity::ALL.into_iter().filter_map(told_of).collect(),
        inputs: (0..plan.spans().len())
            .filter_map(|span| input(&members, weights, span))
            .collect(),
        wet_along: [0, 1].map(|tube| along(&members, weights, tube)),
    })
}

/// How many members of equal weight would know as much.
///
/// # Source
/// `(sum w)^2 / sum w^2`: L. Kish, Survey Sampling (1965), section 11.7.
pub(crate) fn worth(weights: &[f64]) -> f64 {
    let (sum, squares) = weights.iter().fold((0.0, 0.0), |(sum, squares), weight| {
        (sum + weight, squares + weight * weight)
    });
    if 0.0 < squares {
        sum * sum / squares
    } else {
        0.0
    }
}

/// Values of members, each with its weight.
fn weighed(values: &[f64], weights: &[f64]) -> Vec<(f64, f64)> {
    values
        .iter()
        .copied()
        .zip(weights.iter().copied())
        .collect()
}

fn of_quantity(
    members: &[&Member],
    weights: &[f64],
    halves: &[bool],
    quantity: Quantity,
) -> Option<QuantityTold> {
    let values: Option<Vec<f64>> = members
        .iter()
        .map(|member| member.totals.get(quantity))
        .collect();
    let values = values?;
    let pairs = weighed(&values, weights);
    let half = pairs.iter().zip(halves).filter(|(_, is_first)| **is_first);
    let half: Vec<(f64, f64)> = half.map(|(pair, _)| *pair).collect();
    let spread = Spread::weighted(&pairs)?;
    let points: Vec<Vec<f64>> = members.iter().map(|member| member.point.clone()).collect();
    let shares = if members.len() < ENOUGH {
        Vec::new()
    } else {
        weighted_shares(&points, &values, weights)
    };
    let mut shares: Vec<SpanShare> = (shares.into_iter().enumerate())
        .map(|(span, share)| SpanShare { span, share })
        .collect();
    shares.sort_by(|one, other| other.share.total_cmp(&one.share));
    Some(QuantityTold {
        quantity,
        spread,
        moved: Spread::weighted(&half).and_then(|half| moved(&half, &spread)),
        shares,
    })
}

fn moved(half: &Spread, all: &Spread) -> Option<f64> {
    let width = all.p90 - all.p10;
    let most = (half.p10 - all.p10).abs().max((half.p90 - all.p90).abs());
    (0.0 < width).then(|| most / width)
}

fn input(members: &[&Member], weights: &[f64], span: usize) -> Option<InputTold> {
    let values: Option<Vec<f64>> = members
        .iter()
        .map(|one| one.values.get(span).copied())
        .collect();
    let values = values?;
    let pairs = weighed(&values, weights);
    Some(InputTold {
        before: Spread::of(&values)?,
        after: Spread::weighted(&pairs)?,
    })
}

/// Members whose tubes are of other lengths count where they have a place.
fn along(members: &[&Member], weights: &[f64], tube: usize) -> Vec<f64> {
    let of = |member: &Member, place: usize| -> Option<bool> {
        member.wet_along.get(tube)?.get(place).copied()
    };
    let longest = members
        .iter()
        .filter_map(|one| one.wet_along.get(tube).map(Vec::len));
    (0..longest.max().unwrap_or(0))
        .map(|place| {
            let (mut wet, mut all) = (0.0, 0.0);
            for (member, weight) in members.iter().zip(weights) {
                if let Some(is_wet) = of(member, place) {
                    all += weight;
                    wet += if is_wet { *weight } else { 0.0 };
                }
            }
            if 0.0 < all { wet / all } else { 0.0 }
        })
        .collect()
}

impl EnsembleTold {
    /// What is said of one number of the year.
    #[must_use]
    pub fn of(&self, quantity: Quantity) -> Option<&QuantityTold> {
        self.quantities.iter().find(|one| one.quantity == quantity)
    }

    /// The number whose doubt matters most: hours of blindness where there are any, else the water.
    #[must_use]
    pub fn that_matters(&self) -> Option<&QuantityTold> {
        let blind = self.of(Quantity::BlindHours);
        blind
            .filter(|blind| blind.spread.p10 < blind.spread.p90)
            .or_else(|| self.of(Quantity::Water))
    }

    /// The one to three assumed values that decide it, each with its part of the spread.
    #[must_use]
    pub fn deciding(&self, plan: &Plan) -> Vec<SpanShare> {
        let is_assumed = |one: &SpanShare| {
            let span = plan.spans().get(one.span);
            span.is_some_and(|span| matches!(span.origin, Origin::Assumed { .. }))
        };
        let shares = self.that_matters().map_or(&[][..], |one| &one.shares);
        let deciding = shares
            .iter()
            .filter(|one| is_assumed(one) && DECIDES <= one.share);
        deciding.take(NAMED).copied().collect()
    }
}
