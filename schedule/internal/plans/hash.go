package plans

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"

	"example.com/cookday/schedule"
)

// hash is the SHA-256 of the canonical JSON of the request, in hex. Requests
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
