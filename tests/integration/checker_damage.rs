//! checker_damage
