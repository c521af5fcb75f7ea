//! Prints the numbers that the model reckons on this machine, for `cargo xtask test bits` to compare.

mod sums;

fn main() {
    println!("{}", sums::all());
}
