//! Broken project and weather files: every kind of problem has a folder with the file and
//! the exact message. Whole files load into the values that they give.
