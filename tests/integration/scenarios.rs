//! scenarios
