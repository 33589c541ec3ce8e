//! brute_force
