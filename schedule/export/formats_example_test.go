package export_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"log"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// thighs is the end of a plan, made up by hand.
func thighs() schedule.Plan {
	at := func(hour, minute int) time.Time { return time.Date(2027, 7, 3, hour, minute, 0, 0, time.UTC) }
	fixed := func(t time.Time) schedule.Window { return schedule.Window{Early: t, Expected: t, Late: t} }
	return schedule.Plan{TZ: "UTC", Units: "metric", Name: "Thighs at six", Feasible: true, ServeAt: at(18, 0),
		Dishes: []schedule.DishPlan{{ID: "thighs", Name: "Chicken thighs", Count: 8}},
		Steps: []schedule.Step{
			{ID: "1", At: at(16, 50), Window: fixed(at(16, 50)), Kind: schedule.StepLight, Attended: true, Minutes: 5, Text: "light a full chimney"},
			{ID: "2", At: at(17, 20), Window: fixed(at(17, 20)), Kind: schedule.StepPutOn, Dish: "thighs", Attended: true, Minutes: 5, Text: "put the chicken thighs on, skin up"},
		}}
}

// A table for a spreadsheet, read back by the names of its columns.
func ExampleCSV() {
	var table bytes.Buffer
	if err := export.CSV(&table, thighs(), export.TableSteps); err != nil {
		log.Fatal(err)
	}
	rows, err := csv.NewReader(&table).ReadAll()
	if err != nil {
		log.Fatal(err)
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	for _, row := range rows[1:] {
		if row[column["row"]] != "step" {
			continue // what is said of the plan comes below its steps
		}
		fmt.Printf("%s | %s | %s\n", row[column["local_time"]], row[column["kind"]], row[column["text"]])
	}
	// Output:
	// 16:50 | light | light a full chimney
	// 17:20 | put-on | put the chicken thighs on, skin up
}

// A calendar to subscribe to: what a phone will show.
func ExampleCalendar() {
	var calendar bytes.Buffer
	if err := export.Calendar(&calendar, thighs()); err != nil {
		log.Fatal(err)
	}
	for line := range strings.Lines(calendar.String()) {
		for _, property := range []string{"BEGIN:VEVENT", "NAME", "DTSTART;", "SUMMARY"} {
			if strings.HasPrefix(line, property) {
				fmt.Println(strings.TrimSpace(line))
			}
		}
	}
	// Output:
	// NAME:Thighs at six
	// BEGIN:VEVENT
	// DTSTART;TZID=UTC:20270703T165000
	// SUMMARY:Light the fire
	// BEGIN:VEVENT
	// DTSTART;TZID=UTC:20270703T172000
	// SUMMARY:Put on: Chicken thighs
}
