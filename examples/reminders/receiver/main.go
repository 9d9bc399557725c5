// Command receiver stands for whatever rings the bell: it prints what is posted to
// it, one line each, and its address first.
package main

import (
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"os"
	"time"
)

func main() {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		fmt.Fprintln(os.Stderr, "receiver:", err)
		os.Exit(1)
	}
	fmt.Printf("http://%s/\n", l.Addr())
	http.Serve(l, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		var step struct {
			At               time.Time
			Kind, Dish, Text string
			Attended         bool
		}
		if err := json.NewDecoder(http.MaxBytesReader(w, r.Body, 1<<20)).Decode(&step); err != nil {
			http.Error(w, err.Error(), http.StatusBadRequest)
			return
		}
		who := "happens"
		if step.Attended {
			who = "hands"
		}
		fmt.Printf("%s | %s | %s | %s | %s\n", step.At.Format("2006-01-02 15:04"), step.Kind, who, step.Dish, step.Text)
	}))
}
