package export

// TextSize and LetterSize are how pictures reckon with words, for tests from outside.
var TextSize = size

const LetterSize = letterSize
