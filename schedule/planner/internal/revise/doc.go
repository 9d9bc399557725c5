// Package revise answers one question: how does the day go on from here?
//
// In: a plan, a log and an instant ([New]). Out: the plan as it stands
// ([Revision.Plan]). The answer follows from the first request, the whole log and now,
// and from nothing else.
//
// Three tenses, in this order:
//
//	past       menu.go, tell.go, moved.go, grate*.go   what is known of it; it is fixed
//	under way  batch.go, called_off.go, apart.go, scene.go, dated.go, journey.go, live.go, coals.go, way.go, pieces.go, places.go  where each piece is, and what is believed of it
//	ahead      attempts.go, left_out.go, hour.go, arrange.go, chain.go, fire.go, join.go, indoors.go, oven_heat.go, back_on.go, lit_chimney.go  what is left, arranged again
//
// hand.go follows the fire in hand, hand_night.go says how sure its night is, by the readings that looks.go leaves, smothered.go knows a fire whose vents were shut, back_shut.go opens them under what came back, lesson.go says what a finished day teaches of its grill, lesson_pace.go what of its pace, and steering.go puts what the steer room says of it into the words of a plan.
//
// And then what is said: write.go, held.go, stays.go, steps.go, shut_down.go, urgent.go, suspect.go, urgency.go, fuel.go, feed.go, missed.go, weather.go (the plan), ahead.go (the
// other one of two days), findings*.go, safety.go, heatless.go, sear.go, clocks.go, raw_clock.go, raw_out.go, raw_beside.go, slow_ahead.go, slow_over.go, unwatched.go, relit.go, undone.go, feel.go, shown.go, reheat.go, cold_oven.go, cool_oven.go, box_alarm.go, served.go, unplaced.go (what the log shows), advice*.go (what
// could be done), changes.go, why.go (what has changed, and why). The way through all of
// it is in revise.go; again.go makes the first plan again, align.go moves it to where
// the day began.
//
// A log line is read by package schedule; here it is only understood: menu.go and tell.go.
package revise
