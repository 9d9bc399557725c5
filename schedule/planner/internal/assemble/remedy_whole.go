package assemble

import (
	"example.com/cookday/schedule/internal/say"
)

func (t Trouble) Key() string { return say.Listed(t.Dishes, "and") }
