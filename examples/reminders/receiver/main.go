// Command receiver stands for whatever rings the bell: it prints what is posted to
// it, one line a step, and its address first. With a secret it is a webhook too.
package main

import (
	"bytes"
	"crypto/hmac"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"time"
)

func main() {
	file := flag.String("secret", "", "file with the secret that the service signs with")
	flag.Parse()
	r := &receiver{rung: map[string]bool{}}
	if *file != "" {
		text, err := os.ReadFile(*file)
		if err != nil {
			fmt.Fprintln(os.Stderr, "receiver:", err)
			os.Exit(1)
		}
		r.secret = bytes.TrimSpace(text)
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		fmt.Fprintln(os.Stderr, "receiver:", err)
		os.Exit(1)
	}
	fmt.Printf("http://%s/\n", l.Addr())
	http.Serve(l, r)
}

type receiver struct {
	secret []byte
	rung   map[string]bool // events that came already: after a failure they come again
}

// step is one that is due, whichever way it comes.
type step struct {
	At               time.Time
	Kind, Dish, Text string
	Attended         bool
}

func (r *receiver) ServeHTTP(w http.ResponseWriter, q *http.Request) {
	body, err := io.ReadAll(http.MaxBytesReader(w, q.Body, 1<<20))
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	s, err := r.read(q, body)
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	if s == nil {
		return // taken, and nothing to ring for
	}
	who := "happens"
	if s.Attended {
		who = "hands"
	}
	fmt.Printf("%s | %s | %s | %s | %s\n", s.At.Format("2006-01-02 15:04"), s.Kind, who, s.Dish, s.Text)
}

// read takes a step as it is, or out of an event of the webhook.
func (r *receiver) read(q *http.Request, body []byte) (*step, error) {
	if q.Header.Get("Cookday-Signature") == "" {
		s := &step{}
		return s, json.Unmarshal(body, s)
	}
	mac := hmac.New(sha256.New, r.secret)
	mac.Write(body)
	given, err := hex.DecodeString(q.Header.Get("Cookday-Signature"))
	if err != nil || len(r.secret) == 0 || !hmac.Equal(given, mac.Sum(nil)) {
		return nil, errors.New("this was signed by somebody else")
	}
	var event struct {
		ID, Source, Type string
		Data             json.RawMessage
	}
	if err := json.Unmarshal(body, &event); err != nil {
		return nil, err
	}
	name := event.Source + " " + event.ID
	if event.Type != "com.example.cookday.step" || r.rung[name] {
		return nil, nil
	}
	r.rung[name] = true
	s := &step{}
	return s, json.Unmarshal(event.Data, s)
}
