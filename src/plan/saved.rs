//! The saved plan: versioned JSON.
