//! Laws that hold for every route, whatever its numbers: balances, orderings, refinement, finiteness.

mod airflow;
mod balance;
mod boundary;
mod cold;
mod finite;
mod insulation;
mod refinement;
mod round_trip;
mod water_and_air;
mod year;
mod year_water;
