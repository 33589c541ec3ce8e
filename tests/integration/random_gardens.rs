//! random_gardens
