package plans

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"example.com/cookday/schedule"
	"github.com/google/uuid"
)

// Hash is the SHA-256 of the canonical JSON of the request, in hex. Requests
// that mean the same, with or without their defaults written out, have one hash.
// It is empty for a request that has no JSON, which validate refuses.
func Hash(r schedule.Request) string {
	text, err := json.Marshal(r)
	if err != nil {
		return ""
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// planSpace is the name space of plan ids that follow from the request.
var planSpace = uuid.MustParse("6d2f3a0e-6f0b-5a37-9d2c-0d3c9b1f7a55")

// ID is the request's own id, or else a UUIDv5 of its hash.
func ID(r schedule.Request, hash string) string {
	if r.ID != "" {
		return r.ID
	}
	return uuid.NewSHA1(planSpace, []byte(hash)).String()
}

// PartID is the id of a plan that is a part of another one: a UUID too.
func PartID(plan, part string) string {
	return uuid.NewSHA1(planSpace, []byte(plan+"/"+part)).String()
}

// StepID stays the same through revisions, so that a calendar updates instead of
// duplicating.
func StepID(plan, dish string, batch int, kind schedule.StepKind, ordinal int) string {
	return uuid.NewSHA1(planSpace, fmt.Appendf(nil, "%s/%s/%d/%s/%d", plan, dish, batch, kind, ordinal)).String()
}
