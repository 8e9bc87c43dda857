//! Starts the page.

/// Half as large as the standard library's allocator for WebAssembly, and as quick.
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

fn main() {
    dewrun_web::start();
}
