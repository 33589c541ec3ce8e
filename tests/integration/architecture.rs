//! architecture
