package strict

// NonNil is a list that JSON shows as one even where it is empty.
func NonNil[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}
