//! A window drawn as eight tiles from its tenth to its ninetieth percent, each one chance in ten, with a notch at the
//! likely time. The same object on every screen.

use leptos::prelude::*;

/// One tile along an axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tile {
    /// Where it begins, in percent of the axis.
    pub at: f64,
    /// How wide it is, in percent of the axis.
    pub width: f64,
    /// 1 for the palest, outermost, to 4 for the darkest, at the likely time.
    pub depth: u8,
}

/// The tiles between nine places in rising order, given as fractions of the axis. What lies beyond the axis is cut.
#[must_use]
pub fn tiles(deciles: &[f64; 9]) -> [Tile; 8] {
    const DEPTHS: [u8; 8] = [1, 2, 3, 4, 4, 3, 2, 1];
    let place = |at: usize| deciles[at].clamp(0.0, 1.0) * 100.0;
    std::array::from_fn(|n| Tile {
        at: place(n),
        width: (place(n + 1) - place(n)).max(0.0),
        depth: DEPTHS[n],
    })
}

/// Under this share of the axis the tiles could not be told apart: it becomes one block with its notch.
const THIN: f64 = 0.08;

/// The grain of a window, across.
#[component]
pub fn Grain(
    /// The nine deciles as fractions of the axis, 0 to 1.
    #[prop(into)]
    deciles: Signal<[f64; 9]>,
    /// What it shows, in words, with the figures.
    #[prop(into)]
    label: Signal<String>,
    /// Low, for rows.
    #[prop(optional)]
    low: bool,
) -> impl IntoView {
    let class = move || {
        let [from, .., to] = deciles.get();
        let low = if low { " sm" } else { "" };
        let thin = if to - from < THIN { " thin" } else { "" };
        format!("grain{low}{thin}")
    };
    let tile = move |n: usize| {
        let tile = move || tiles(&deciles.get())[n];
        let end = if n == 7 { " z" } else { "" };
        view! {
            <i
                class=move || format!("q{}{end}", tile().depth)
                style=("--a", move || format!("{:.3}%", tile().at))
                style=("--w", move || format!("{:.3}%", tile().width))
            ></i>
        }
    };
    let notch = move || format!("{:.3}%", deciles.get()[4].clamp(0.0, 1.0) * 100.0);
    view! {
        <span class=class role="img" aria-label=move || label.get()>
            {(0..8).map(tile).collect_view()}
            <b style=("--a", notch)></b>
        </span>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tiles_join_from_the_tenth_to_the_ninetieth_percent() {
        let tiles = tiles(&[0.1, 0.2, 0.28, 0.33, 0.37, 0.42, 0.5, 0.6, 0.75]);
        assert_eq!(tiles[0].at, 10.0);
        for pair in tiles.windows(2) {
            assert!((pair[0].at + pair[0].width - pair[1].at).abs() < 1e-9);
        }
        let end = tiles[7].at + tiles[7].width;
        assert!((end - 75.0).abs() < 1e-9);
        assert_eq!(tiles.map(|tile| tile.depth), [1, 2, 3, 4, 4, 3, 2, 1]);
    }

    #[test]
    fn what_lies_beyond_the_axis_is_cut() {
        let tiles = tiles(&[-0.5, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.9, 1.4]);
        assert_eq!(tiles[0].at, 0.0);
        assert!((tiles[7].at + tiles[7].width - 100.0).abs() < 1e-9);
        assert!(tiles.iter().all(|tile| tile.width >= 0.0));
    }
}
