package schedule

import (
	"slices"

	"example.com/cookday/schedule/internal/safety"
)

func PrepOf(words []string) safety.Prep {
	return safety.Prep{
		Stuffed: slices.Contains(words, "stuffed"), Injected: slices.Contains(words, "injected"),
		Tenderised: slices.Contains(words, "tenderised"), Rolled: slices.Contains(words, "rolled"),
		Brined: slices.Contains(words, "brined"),
	}
}
