package assemble

// leastLeft is how long, in minutes, a piece that is not off yet still takes.
const LeastLeft = 1
