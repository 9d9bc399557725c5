package push

import (
	"bytes"
	"context"
	"crypto/hmac"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"time"
)

// Types of the events, as CloudEvents want them: a name of one's own, turned round.
const (
	TypeStep     = "com.example.cookday.step"     // a step is due
	TypeRevision = "com.example.cookday.revision" // the plan was made or revised
	TypeEnd      = "com.example.cookday.end"      // the plan was deleted
)

// HeaderSignature carries the HMAC-SHA-256 of the body, in hexadecimal digits.
const HeaderSignature = "Cookday-Signature"

// answerTime is how long a receiver may take: less than a lease.
const answerTime = 10 * time.Second

// Webhook posts each event to an address: CloudEvents 1.0, structured JSON.
type Webhook struct {
	address string
	name    string
	secret  []byte
	program string
	client  *http.Client
}

// NewWebhook makes a webhook that signs with a secret. Private addresses are refused
// unless they are allowed. The error says what is wrong with the address.
func NewWebhook(address string, secret []byte, allowPrivate bool, program string) (*Webhook, error) {
	u, err := url.Parse(address)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		return nil, fmt.Errorf("%q is no address such as https://example.com/cookday", address)
	}
	dialer := &net.Dialer{Timeout: 5 * time.Second, KeepAlive: 30 * time.Second}
	if !allowPrivate {
		dialer.Control = publicOnly
	}
	sum := sha256.Sum256([]byte(address))
	return &Webhook{
		address: address, secret: secret, program: program,
		name: "webhook " + u.Scheme + "://" + u.Host + " " + hex.EncodeToString(sum[:4]), // a path may hold a secret
		client: &http.Client{
			Timeout:       answerTime,
			CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }, // it may lead anywhere
			Transport: &http.Transport{DialContext: dialer.DialContext, TLSHandshakeTimeout: 5 * time.Second, ResponseHeaderTimeout: answerTime,
				MaxIdleConnsPerHost: 8, IdleConnTimeout: time.Minute, ForceAttemptHTTP2: true},
		},
	}, nil
}

// Name is that of the way.
func (h *Webhook) Name() string { return h.name }

// cloudEvent is an event of CloudEvents 1.0 in its structured JSON form. The source and
// the id together name it for good.
type cloudEvent struct {
	SpecVersion string    `json:"specversion"`
	ID          string    `json:"id"`
	Source      string    `json:"source"`
	Type        string    `json:"type"`
	Subject     string    `json:"subject,omitempty"` // the id of the step
	Time        time.Time `json:"time"`
	ContentType string    `json:"datacontenttype"`
	Data        any       `json:"data"`
}

// gone is all that is said of a plan that was deleted.
type gone struct {
	Plan string `json:"plan"`
}

func eventOf(m Message) cloudEvent {
	e := cloudEvent{SpecVersion: "1.0", ID: m.ID, Source: "urn:uuid:" + m.Topic, Time: m.At.UTC(), ContentType: "application/json"}
	switch {
	case m.Event == nil:
		e.Type, e.Data = TypeEnd, gone{m.Topic}
	case m.Event.News != nil:
		e.Type, e.Data = TypeRevision, m.Event.News
	default:
		e.Type, e.Subject, e.Data = TypeStep, m.Event.Step.Step, m.Event.Step
	}
	return e
}

// answered is what a receiver said.
type answered struct{ status int }

func (a *answered) Error() string {
	return fmt.Sprintf("the receiver answers %d %s", a.status, http.StatusText(a.status))
}

// Send posts one event; only an answer of success counts.
func (h *Webhook) Send(ctx context.Context, m Message) error {
	body, err := json.Marshal(eventOf(m))
	if err != nil {
		return err
	}
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, h.address, bytes.NewReader(body))
	if err != nil {
		return err
	}
	r.Header.Set("Content-Type", "application/cloudevents+json; charset=utf-8")
	r.Header.Set("User-Agent", h.program)
	r.Header.Set(HeaderSignature, Signature(h.secret, body))
	answer, err := h.client.Do(r)
	if err != nil {
		var lost *url.Error
		if errors.As(err, &lost) { // says the address, which may hold a secret
			return lost.Err
		}
		return err
	}
	defer answer.Body.Close()
	io.Copy(io.Discard, io.LimitReader(answer.Body, 64<<10)) // so that the line can be used again
	if answer.StatusCode < 200 || answer.StatusCode > 299 {
		return &answered{answer.StatusCode}
	}
	return nil
}

// Signature is what a receiver works out again, and compares.
func Signature(secret, body []byte) string {
	mac := hmac.New(sha256.New, secret)
	mac.Write(body)
	return hex.EncodeToString(mac.Sum(nil))
}

// Refused says whether the receiver understood the call and will not have it. Of those
// answers some ask to come back later.
func (h *Webhook) Refused(err error) bool {
	var a *answered
	if !errors.As(err, &a) {
		return false
	}
	switch a.status {
	case http.StatusRequestTimeout, http.StatusTooEarly, http.StatusTooManyRequests:
		return false
	}
	return a.status < 500
}
