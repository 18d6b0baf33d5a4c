package knowledge

// Embedded lets the tests outside read the very text that was loaded.
var Embedded = files
