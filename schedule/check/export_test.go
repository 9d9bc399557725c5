package check

// RuleNames are the names of all rules.
func RuleNames() []string {
	var names []string
	for _, r := range checkRules {
		names = append(names, r.name)
	}
	return names
}
