//! Who owns a draw: the world, a cooker, or a piece of meat.

/// The owner of a set of draws, by the part it plays. The same key and seed give the same draws wherever they are
/// used: pieces on one cooker share their cooker's. A random id is no key: two devices would disagree.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct OwnerKey(u64);

/// What kind of owner; keeps a cooker and a piece with the same key apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Owner {
    World,
    Cooker(OwnerKey),
    Piece(OwnerKey),
}

impl OwnerKey {
    /// The key of whatever this text names.
    ///
    /// FNV-1a, 64 bits (Fowler, Noll, Vo; RFC 9923).
    #[must_use]
    pub const fn from_text(text: &str) -> Self {
        let mut hash = 0xcbf2_9ce4_8422_2325_u64;
        let bytes = text.as_bytes();
        let mut at = 0;
        while at < bytes.len() {
            hash ^= bytes[at] as u64;
            hash = hash.wrapping_mul(0x0100_0000_01b3);
            at += 1;
        }
        Self(hash)
    }
}

impl Owner {
    /// The seed of this owner's own sequence.
    const fn sequence(self, seed: u64) -> u32 {
        let (kind, key) = match self {
            Self::World => (1, 0),
            Self::Cooker(OwnerKey(key)) => (2, key),
            Self::Piece(OwnerKey(key)) => (3, key),
        };
        let mixed = mix(mix(seed ^ kind) ^ key);
        (mixed >> 32) as u32
    }

    /// One coordinate of one member, in the open interval 0..1.
    ///
    /// A scrambled Sobol sequence (Owen scrambling after Burley 2020, Journal of Computer Graphics Techniques 9(4)).
    /// Each owner has a sequence of its own, scrambled and shuffled by its seed; putting such sequences side by side
    /// is the padding of Burley and the Latin supercube of Owen (1998), ACM TOMACS 8(1):71-102. Any first 2^k members
    /// cover each owner's space evenly. `member` below 65,536, `dimension` below 256.
    pub(super) fn coordinate(self, seed: u64, member: u32, dimension: u32) -> f64 {
        // The sequence is in steps of 2^-23 from 0; half a step keeps it off both ends.
        f64::from(sobol_burley::sample(member, dimension, self.sequence(seed))) + 0.5 / 8_388_608.0
    }
}

/// Mixes 64 bits: the finaliser of SplitMix64 (Steele, Lea, Flood 2014, OOPSLA, with the constants of variant 13 by
/// Stafford).
const fn mix(mut bits: u64) -> u64 {
    bits = bits.wrapping_add(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_the_published_hash() {
        // Test vectors of the hash: the empty text, "a", "foobar".
        assert_eq!(OwnerKey::from_text("").0, 0xcbf2_9ce4_8422_2325);
        assert_eq!(OwnerKey::from_text("a").0, 0xaf63_dc4c_8601_ec8c);
        assert_eq!(OwnerKey::from_text("foobar").0, 0x8594_4171_f739_67e8);
    }

    #[test]
    fn the_first_eight_members_fall_one_into_each_eighth() {
        let owner = Owner::Piece(OwnerKey::from_text("shoulder"));
        for dimension in 0..16 {
            for first in [8_u32, 16, 64] {
                let mut cells: Vec<u32> = (0..first)
                    .map(|member| {
                        let u = owner.coordinate(7, member, dimension);
                        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                        let cell = (u * f64::from(first)) as u32;
                        cell
                    })
                    .collect();
                cells.sort_unstable();
                assert_eq!(cells, (0..first).collect::<Vec<_>>());
            }
        }
    }

    #[test]
    fn owners_do_not_go_together() {
        let owners = [
            Owner::World,
            Owner::Cooker(OwnerKey::from_text("a")),
            Owner::Piece(OwnerKey::from_text("a")),
            Owner::Piece(OwnerKey::from_text("b")),
            Owner::Piece(OwnerKey::from_text("c")),
        ];
        let members = 256_u32;
        for (i, one) in owners.iter().enumerate() {
            for other in &owners[i + 1..] {
                let sum: f64 = (0..members)
                    .map(|m| (one.coordinate(1, m, 0) - 0.5) * (other.coordinate(1, m, 0) - 0.5))
                    .sum();
                let correlation = sum * 12.0 / f64::from(members);
                // Three standard errors of an unrelated pair.
                assert!(
                    correlation.abs() < 3.0 / 16.0,
                    "{one:?} {other:?}: {correlation}"
                );
            }
        }
    }
}
