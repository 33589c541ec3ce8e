//! growth_reference
