//! The model reckons the same bits in the browser as on this machine.
//!
//! `cargo xtask test bits` first runs `print.rs` here, then compiles this for WebAssembly, once with vector
//! instructions and once without, and runs it in Node. The numbers to be met come in when it is compiled.

#[cfg(target_arch = "wasm32")]
mod sums;

#[cfg(target_arch = "wasm32")]
#[wasm_bindgen_test::wasm_bindgen_test]
fn the_same_bits_as_on_the_machine_that_compiled_this() {
    assert_eq!(sums::all(), env!("LONGCOOK_SUMS"));
}
