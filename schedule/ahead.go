package schedule

// readyDayBefore is the word of a dish that is cooked the day before, chilled, and
// warmed again for the table.
const ReadyDayBefore = "day-before"
