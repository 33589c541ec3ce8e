//! project_errors
