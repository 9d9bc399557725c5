// Package push tells the house what comes due: by a broker (MQTT), or by a webhook, which
// is a POST to an address of somebody's own. It knows the outbox of the store and the
// events of a plan, and no route of the service.
//
// A [Pusher] takes a plan's mark from the outbox, asks what is due after it, hands each
// event to its [Way], and keeps the mark. So every event is told at least once, those of a
// plan in order, and what is told twice after a failure carries the same id. What a way
// takes for good is tried again for a day, what it refuses a few times; then it is given
// up, and listed as a dead letter.
//
//	pusher.go, tell.go, followers.go  from the outbox to a way
//	webhook.go, private.go            a POST, signed, to no private address
//	mqtt.go                           topics of a broker
package push
