// In place of the grid's hyphenation patterns: cells are not hyphenated, and some of the patterns are copyleft where they
// come from, whatever the package around them says.
export {};
