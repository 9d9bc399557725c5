package day

// curvePoints is how many samples a predicted curve has, about.
const CurvePoints = 40
