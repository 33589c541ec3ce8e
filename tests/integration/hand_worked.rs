//! hand_worked
