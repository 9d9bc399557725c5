package main

import (
	"context"
	"crypto/tls"
	"crypto/x509"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"example.com/cookday/api"
	"example.com/cookday/api/metrics"
	"example.com/cookday/api/push"
)

// pushFlags are the flags of listen that say where what is due goes.
type pushFlags struct {
	webhooks                    []string
	secretFile                  string
	private                     bool
	mqtt, credentials, ca, base string
	trials                      bool
}

func (p *pushFlags) add(f *pflag.FlagSet) {
	f.StringSliceVar(&p.webhooks, "webhook", nil, "`address` to post to when a plan changes and when a step is due")
	f.StringVar(&p.secretFile, "webhook-secret-file", "", "`file` with the secret that signs what is posted")
	f.BoolVar(&p.private, "webhook-private", false, "allow webhooks to addresses of this machine and of the house")
	f.StringVar(&p.mqtt, "mqtt", "", "`broker` to publish at, as mqtt://host:1883, or mqtts://host:8883 for TLS")
	f.StringVar(&p.credentials, "mqtt-credentials", "", "`file` with the user and, on its second line, the password for the broker")
	f.StringVar(&p.ca, "mqtt-ca", "", "`file` with the certificates to trust a broker by (if not given: those of this machine)")
	f.StringVar(&p.base, "mqtt-prefix", "cookday", "`topic` that all topics begin with")
	f.BoolVar(&p.trials, "push-trials", false, "push what is due of trials too, though they do not go by the clock")
}

// ways are where what is due goes.
type ways struct {
	all    []push.Way
	broker *push.Broker
	trials bool
	end    context.CancelFunc
	ended  chan struct{}
}

// ways makes what the flags ask for.
func (p *pushFlags) ways(ctx context.Context) (*ways, error) {
	w := &ways{trials: p.trials}
	secret, err := p.secret()
	if err != nil {
		return nil, err
	}
	for _, address := range p.webhooks {
		h, err := push.NewWebhook(address, secret, p.private, program())
		if err != nil {
			return nil, usage("--webhook: %s", err)
		}
		w.all = append(w.all, h)
	}
	if p.mqtt == "" {
		return w, nil
	}
	cfg := push.BrokerConfig{Address: p.mqtt, Prefix: p.base}
	if cfg.User, cfg.Password, err = p.user(); err != nil {
		return nil, err
	}
	if cfg.TLS, err = p.roots(); err != nil {
		return nil, err
	}
	if w.broker, err = push.NewBroker(context.WithoutCancel(ctx), cfg); err != nil {
		return nil, usage("--mqtt: %s", err)
	}
	w.all = append(w.all, w.broker)
	return w, nil
}

// measured has what goes out counted.
func (w *ways) measured(m *metrics.Metrics) {
	for i, way := range w.all {
		w.all[i] = m.Way(way)
	}
}

// begin pushes until the context ends.
func (w *ways) begin(ctx context.Context, cfg api.Config, service *api.Service) error {
	if len(w.all) == 0 {
		return nil
	}
	p, err := push.New(ctx, push.Config{Store: cfg.Store, Service: service, Ways: w.all, Log: cfg.Log, Trials: w.trials})
	if err != nil {
		return err
	}
	ctx, w.end = context.WithCancel(ctx)
	w.ended = make(chan struct{})
	go func() {
		defer close(w.ended)
		p.Run(ctx)
	}()
	return nil
}

// close waits for what is under way and leaves the broker.
func (w *ways) close() {
	if w.end != nil {
		w.end()
		<-w.ended
	}
	if w.broker != nil {
		w.broker.Close()
	}
}

// secret is what webhooks sign with: without one a receiver cannot tell who posts.
func (p *pushFlags) secret() ([]byte, error) {
	switch {
	case len(p.webhooks) == 0:
		return nil, nil
	case p.secretFile == "":
		return nil, usage("--webhook: give --webhook-secret-file, by which the receiver knows who posts")
	}
	text, err := os.ReadFile(p.secretFile)
	if err != nil {
		return nil, usage("--webhook-secret-file: %s", err)
	}
	secret := strings.TrimSpace(string(text))
	if len(secret) < leastToken || strings.ContainsAny(secret, " \t\r\n") {
		return nil, usage("--webhook-secret-file: %s must have one line of at least %d characters without blanks", p.secretFile, leastToken)
	}
	return []byte(secret), nil
}

// user reads who the broker knows this service as.
func (p *pushFlags) user() (name, password string, err error) {
	if p.credentials == "" {
		return "", "", nil
	}
	text, err := os.ReadFile(p.credentials)
	if err != nil {
		return "", "", usage("--mqtt-credentials: %s", err)
	}
	lines := strings.Split(strings.TrimRight(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n"), "\n")
	if len(lines) != 2 || lines[0] == "" {
		return "", "", usage("--mqtt-credentials: %s must have two lines, the user and the password", p.credentials)
	}
	return lines[0], lines[1], nil
}

// roots are the certificates that a broker is trusted by; nil for those of the machine.
func (p *pushFlags) roots() (*tls.Config, error) {
	if p.ca == "" {
		return nil, nil
	}
	text, err := os.ReadFile(p.ca)
	if err != nil {
		return nil, usage("--mqtt-ca: %s", err)
	}
	pool := x509.NewCertPool()
	if !pool.AppendCertsFromPEM(text) {
		return nil, usage("--mqtt-ca: %s has no certificate in PEM", p.ca)
	}
	return &tls.Config{RootCAs: pool, MinVersion: tls.VersionTLS12}, nil
}

// program is how this service names itself to a receiver.
func program() string {
	if v := version(); v != "" {
		return "cookday/" + v
	}
	return "cookday"
}
