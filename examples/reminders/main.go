// Command reminders subscribes to the event stream of a plan, prints each step when
// it is due and posts it to a receiver, such as the webhook of a home-automation flow:
//
//	reminders -plan http://127.0.0.1:8018/v1/plans/ID -to http://127.0.0.1:1880/cook
//
// With -request it has a file planned first, by the service that -plan names then:
//
//	reminders -plan http://127.0.0.1:8018/v1/plans -request party.yaml -to ...
//
// It keeps the id of the last event in a file and goes on from there after a restart,
// so no step comes twice. If it is killed between the receiver's answer and the
// writing of the file, one step may; its Idempotency-Key is the same both times.
package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/signal"
	"strings"
	"time"
)

type options struct {
	plan, request, to, state, token string
	all                             bool
	steps                           int
	idle                            time.Duration

	quiet *time.Timer // ends the program after idle
}

func main() {
	var o options
	flag.StringVar(&o.plan, "plan", "", "address of the plan")
	flag.StringVar(&o.request, "request", "", "file to have planned first; -plan is where plans are posted to")
	flag.StringVar(&o.to, "to", "", "address to post each step to")
	flag.StringVar(&o.state, "state", "last-event.txt", "file for the id of the last event")
	flag.StringVar(&o.token, "token", "", "token of the service, if it asks for one")
	flag.BoolVar(&o.all, "all", false, "without a file: begin with what is past already")
	flag.IntVar(&o.steps, "steps", 0, "end after so many steps; 0 goes on until the plan is deleted")
	flag.DurationVar(&o.idle, "idle", 0, "end when no step has come for so long; 0 waits for ever")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := o.run(ctx); err != nil {
		fmt.Fprintln(os.Stderr, "reminders:", err)
		os.Exit(1)
	}
}

func (o *options) run(ctx context.Context) error {
	if o.request != "" {
		if err := o.have(ctx); err != nil {
			return err
		}
		fmt.Println("following", o.plan)
	}
	return o.follow(ctx)
}

// have has the request planned and takes the plan's address.
func (o *options) have(ctx context.Context) error {
	text, err := os.ReadFile(o.request)
	if err != nil {
		return err
	}
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, o.plan, bytes.NewReader(text))
	if err != nil {
		return err
	}
	r.Header.Set("Content-Type", "application/yaml")
	answer, err := o.do(r)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	if answer.StatusCode != http.StatusCreated {
		problem, _ := io.ReadAll(io.LimitReader(answer.Body, 1<<20))
		return fmt.Errorf("%s: %s", answer.Status, problem)
	}
	address, err := answer.Location()
	o.plan = fmt.Sprint(address)
	return err
}

// do sends a request with the token.
func (o *options) do(r *http.Request) (*http.Response, error) {
	if o.token != "" {
		r.Header.Set("Authorization", "Bearer "+o.token)
	}
	return http.DefaultClient.Do(r)
}

var errDone = errors.New("done")

// follow reads the stream again and again, as connections do not last for ever.
func (o *options) follow(ctx context.Context) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	if o.idle > 0 {
		o.quiet = time.AfterFunc(o.idle, cancel)
	}
	for {
		err := o.read(ctx)
		var refused *refusal
		switch {
		case errors.Is(err, errDone), ctx.Err() != nil:
			return nil
		case errors.As(err, &refused):
			return err
		}
		fmt.Fprintln(os.Stderr, "reminders: connecting again:", err)
		select {
		case <-time.After(3 * time.Second):
		case <-ctx.Done():
		}
	}
}

// refusal is an answer that will not get better by asking again.
type refusal struct{ status string }

func (r *refusal) Error() string { return "the service answers " + r.status }

func (o *options) read(ctx context.Context) error {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, o.plan+"/stream", nil)
	if err != nil {
		return &refusal{err.Error()}
	}
	if last := o.last(); last != "" {
		r.Header.Set("Last-Event-ID", last)
	}
	answer, err := o.do(r)
	if err != nil {
		return err
	}
	defer answer.Body.Close()
	if answer.StatusCode >= 400 && answer.StatusCode < 500 {
		return &refusal{answer.Status}
	}
	if answer.StatusCode != http.StatusOK {
		return errors.New(answer.Status)
	}
	return o.events(ctx, answer.Body)
}

// last is where to go on.
func (o *options) last() string {
	text, err := os.ReadFile(o.state)
	if err != nil && o.all {
		return "0.0"
	}
	return strings.TrimSpace(string(text))
}

// events takes a stream apart (WHATWG HTML, 9.2.6).
func (o *options) events(ctx context.Context, stream io.Reader) error {
	lines := bufio.NewScanner(stream)
	lines.Buffer(nil, 1<<20)
	var kind, id, data string
	for lines.Scan() {
		field, value, _ := strings.Cut(lines.Text(), ":")
		value = strings.TrimPrefix(value, " ")
		switch field {
		case "event":
			kind = value
		case "id":
			id = value
		case "data":
			data += value
		case "":
			if lines.Text() != "" || data == "" {
				continue // a comment, or nothing yet
			}
			if err := o.take(ctx, kind, id, data); err != nil {
				return err
			}
			kind, data = "", ""
		}
	}
	return errors.Join(lines.Err(), io.ErrUnexpectedEOF)
}

// take acts on one event and remembers it.
func (o *options) take(ctx context.Context, kind, id, data string) error {
	if o.quiet != nil {
		o.quiet.Reset(o.idle)
	}
	switch kind {
	case "deleted":
		fmt.Println("the plan was deleted")
		return errDone
	case "revision":
		var news struct{ Changes []string }
		if err := json.Unmarshal([]byte(data), &news); err != nil {
			return err
		}
		fmt.Println("the plan was revised:", strings.Join(news.Changes, " "))
	case "step":
		if err := o.step(ctx, id, data); err != nil {
			return err
		}
	}
	if err := os.WriteFile(o.state, []byte(id+"\n"), 0o600); err != nil {
		return err
	}
	if kind == "step" && o.steps > 0 {
		if o.steps--; o.steps == 0 {
			return errDone
		}
	}
	return nil
}

func (o *options) step(ctx context.Context, id, data string) error {
	var step struct {
		At         time.Time
		Dish, Text string
	}
	if err := json.Unmarshal([]byte(data), &step); err != nil {
		return err
	}
	fmt.Printf("%s %s\n", step.At.Format("15:04"), step.Text)
	if o.to == "" {
		return nil
	}
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, o.to, bytes.NewReader([]byte(data)))
	if err != nil {
		return &refusal{err.Error()}
	}
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Idempotency-Key", o.plan+"#"+id)
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return err
	}
	answer.Body.Close()
	if answer.StatusCode >= 300 {
		return fmt.Errorf("the receiver answers %s", answer.Status)
	}
	return nil
}
