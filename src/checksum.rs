//! A short mark of bytes: FNV-1a of 128 bits (D. Eastlake and others, "The FNV Non-Cryptographic
//! Hash Algorithm"). It tells files and events apart; it is no protection against forgers.

/// Where every mark begins, and what it is multiplied by after each byte.
const BASIS: u128 = 0x6c62_272e_07bb_0142_62b8_2175_6295_c58d;
const PRIME: u128 = (1 << 88) + (1 << 8) + 0x3b;

/// The mark of some bytes.
#[must_use]
pub fn checksum(bytes: &[u8]) -> u128 {
    let step = |mark: u128, byte: &u8| (mark ^ u128::from(*byte)).wrapping_mul(PRIME);
    bytes.iter().fold(BASIS, step)
}

/// The mark as 32 digits.
#[must_use]
pub fn digits(bytes: &[u8]) -> String {
    format!("{:032x}", checksum(bytes))
}
