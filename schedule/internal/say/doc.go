// Package say has the small words of a sentence: lists, plurals, quotes, the nearest
// known word to a misspelt one. It knows nothing of cooking.
package say
