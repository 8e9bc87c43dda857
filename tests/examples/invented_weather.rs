//! Writes the invented weather file of the demos.

fn main() {
    print!("{}", dewrun_tests::invented_weather::text());
}
