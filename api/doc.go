// Package api is the HTTP door to the planner: routes, decoding, the table of
// status codes and content types. It holds no formula and no SQL. Requests are
// read by the decoder of package schedule, plans are rendered by
// schedule/export, and kept by a [Store].
//
// [New] makes a [Service] of a [Config]; its Handler is an http.Handler, and
// its Serve runs a server with timeouts until the context ends.
//
// The address of a plan is a capability: whoever knows it may read the plan,
// add readings and delete it. Ids are random (122 bits), the log never shows them,
// and a calendar feed's address should be treated like a password.
package api
