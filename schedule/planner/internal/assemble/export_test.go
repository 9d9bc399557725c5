package assemble

// TakeOutLarge is how many minutes before its put-on a large piece is taken out.
const TakeOutLarge = takeOutLarge
