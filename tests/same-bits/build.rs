//! Computes the bits of every outcome on the machine that builds, whatever machine it builds for.

#[path = "src/bits.rs"]
mod bits;

use std::fmt::Write;
use std::path::Path;
use std::{env, fs};

fn main() {
    println!("cargo:rerun-if-changed=../cases");
    let mut rows = String::from("[\n");
    for (name, bits) in bits::all() {
        writeln!(rows, "    (\"{name}\", {bits:?}),").expect("text can be appended to");
    }
    rows.push(']');
    let out = env::var_os("OUT_DIR").expect("cargo names a folder for what is built");
    fs::write(Path::new(&out).join("native.rs"), rows).expect("that folder can be written to");
}
