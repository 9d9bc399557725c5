// Package sequence finds which arrangement of a cook day is best, and says
// whether that is proven. It knows integers only: minutes before the last
// serving instant (larger is earlier) and square centimetres.
package sequence
