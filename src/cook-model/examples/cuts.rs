//! Prints the catalogue as the stiff solver's script reads it: `cargo xtask generate` keeps it in `tests/reference/stiff`.

use std::collections::BTreeMap;

use cook_model::meat::{Bone, catalogue};
use serde_json::json;

fn main() {
    let cuts: BTreeMap<&str, serde_json::Value> = catalogue()
        .iter()
        .map(|cut| {
            let (shape, parts) = (cut.shape, cut.composition);
            let under = match cut.bone {
                Bone::Under { thickness, .. } => thickness.metres(),
                Bone::None | Bone::Within { .. } => 0.0,
            };
            let metres = [shape.thickness, shape.width, shape.length].map(|side| side.metres());
            let programme = cut.programme;
            let wrap = programme
                .wrap
                .map(|(cover, core)| json!([cover, core.celsius()]));
            let entry = json!({
                "kg": shape.mass.kilograms(),
                "metres": metres,
                "fill": shape.fill,
                "exponents": shape.exponents,
                "composition": [parts.water, parts.protein, parts.fat, parts.ash],
                "evaporating_share": cut.evaporating_share,
                "demand": cut.demand,
                "bone_under_metres": under,
                "programme": {
                    "pit_c": programme.pit.celsius(),
                    "wrap": wrap,
                    "target_c": programme.target.celsius(),
                },
            });
            (cut.id.slug(), entry)
        })
        .collect();
    println!("{:#}", json!(cuts));
}
