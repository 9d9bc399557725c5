package day

// roomC is the air of a kitchen or a shaded table.
const RoomC = 21.0
