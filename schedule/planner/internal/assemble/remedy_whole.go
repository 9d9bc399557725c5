package assemble

import (
	saypkg "example.com/cookday/schedule/internal/say"
)

func (t Trouble) Key() string { return saypkg.Listed(t.Dishes, "and") }
