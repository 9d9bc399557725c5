// Package api is the HTTP door to the planner: routes, decoding, the table of
// status codes and content types. It holds no formula and no SQL. Requests are
// read by the decoder of package schedule, plans are rendered by
// schedule/export, and kept by a [Store].
//
// [New] makes a [Service] of a [Config]; its Handler is an http.Handler, and
// its Serve runs a server with timeouts until the context ends.
//
// The address of a plan is a capability: whoever knows it may read, change and delete
// the plan. Ids are random (122 bits), and the log never shows them. A plan's feed has an
// address of its own, which only shows it and can be revoked.
//
// The sheet of a plan is live, with forms by which a cook logs what was read and done, and
// what is due goes out by package push, which follows plans by a [Follower].
//
// What a stranger sends is counted before it is read ([scanned]), read apart from what
// others send, and planned in a place of its kind ([gates]). A change of a plan is made
// up outside the store and kept only if nobody else was faster.
package api
