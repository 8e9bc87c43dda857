//! Starts the page.

fn main() {
    dewrun_web::start();
}
