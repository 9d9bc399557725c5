package plans

import (
	"fmt"

	"example.com/cookday/schedule"
	"github.com/google/uuid"
)

// planSpace is the name space of plan ids that follow from the request.
var planSpace = uuid.MustParse("6d2f3a0e-6f0b-5a37-9d2c-0d3c9b1f7a55")

// planID is the request's own id, or else a UUIDv5 of its hash.
func ID(r schedule.Request, hash string) string {
	if r.ID != "" {
		return r.ID
	}
	return uuid.NewSHA1(planSpace, []byte(hash)).String()
}

// stepID stays the same through revisions, so that a calendar updates instead of
// duplicating.
func StepID(plan, dish string, batch int, kind schedule.StepKind, ordinal int) string {
	return uuid.NewSHA1(planSpace, fmt.Appendf(nil, "%s/%s/%d/%s/%d", plan, dish, batch, kind, ordinal)).String()
}
