package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.com/cookday/api"
	"example.com/cookday/api/metrics"
)

const (
	storeMemory = "memory"
	leastToken  = 16 // characters: shorter ones can be guessed
	envPrefix   = "COOKDAY_"
)

// listenFlags are the flags of listen.
type listenFlags struct {
	address, store, tokenFile, log string
	metrics                        string
	allowRemote, noAuth            bool
	hosts, proxies                 []string
	solves, streams, streamsEach   int
	keep                           string
	drain                          time.Duration
	push                           pushFlags
}

func listenCommand() *cobra.Command {
	var l listenFlags
	cmd := &cobra.Command{
		Use:   "listen",
		Short: "Answer over HTTP",
		Long: `listen answers over HTTP until it is interrupted; openapi.yaml describes the calls.
It listens on this machine only. For another address say --allow-remote, and give
a token that every call must carry in the header "Authorization: Bearer TOKEN", or
as the password of any user, which is what calendars can send.
It doesn't do TLS; put a proxy that does in front of it.

The address of a plan is a secret of its own: whoever has it can read that plan,
add readings to it and delete it. To guests and calendars give the address of its
feed, which can do nothing but show the plan, and can be revoked.

Every flag has an environment variable, which the flag overrides: --token-file is
` + envPrefix + `TOKEN_FILE, and so on; lists are written with commas.`,
		Example: `  cookday listen
  cookday listen --store memory --address 127.0.0.1:9000
  cookday listen --address :8018 --allow-remote --token-file token.txt`,
		Args: operands(),
		RunE: func(cmd *cobra.Command, _ []string) error {
			if err := fromEnvironment(cmd.Flags(), os.LookupEnv); err != nil {
				return err
			}
			return l.listen(cmd.Context(), cmd.OutOrStdout(), cmd.ErrOrStderr())
		},
	}
	f := cmd.Flags()
	f.StringVar(&l.address, "address", "127.0.0.1:8018", "`host:port` to listen on; port 0 takes a free one")
	f.StringVar(&l.store, "store", "", "`file` to keep plans in, memory to forget them at the end, or the address of a database, postgres://user@host/name (if not given: cookday/plans.db in your config directory)")
	f.BoolVar(&l.allowRemote, "allow-remote", false, "allow an address that other machines reach")
	f.StringVar(&l.tokenFile, "token-file", "", "`file` with the token that calls must carry")
	f.BoolVar(&l.noAuth, "no-auth", false, "with --allow-remote: let everybody in who can reach the address")
	f.StringSliceVar(&l.hosts, "host", nil, "`name` this service is called by, besides its own address (a proxy's, say)")
	f.StringSliceVar(&l.proxies, "trust-proxy", nil, "`network` (such as 10.0.0.0/24) whose X-Forwarded-For is believed, in the log")
	f.IntVar(&l.solves, "solves", 0, "`plans` made at once (if not given: the number of processors)")
	f.IntVar(&l.streams, "streams", 5000, "event `streams` open at once")
	f.IntVar(&l.streamsEach, "streams-each", 0, "event `streams` of one client (if not given: a quarter of --streams)")
	f.StringVar(&l.keep, "keep", "", "`time` to keep a plan after its meal and its last change, such as 400d (if not given: for ever)")
	f.DurationVar(&l.drain, "drain", time.Second, "`time` to answer that the service is about to end before it does")
	f.StringVar(&l.log, "log", formatText, "`format` of the log on standard error: text, json or none")
	complete(cmd, "log", formatText, formatJSON, "none")
	f.StringVar(&l.metrics, "metrics", "", "`address` of its own for GET /metrics, which then asks for no token (if not given: that of the service, with its token)")
	l.push.add(f)
	return cmd
}

// fromEnvironment sets the flags that are not on the command line.
func fromEnvironment(flags *pflag.FlagSet, look func(string) (string, bool)) error {
	var fault error
	flags.VisitAll(func(f *pflag.Flag) {
		name := envPrefix + strings.ToUpper(strings.ReplaceAll(f.Name, "-", "_"))
		text, ok := look(name)
		if f.Changed || !ok || f.Name == "help" {
			return
		}
		if err := flags.Set(f.Name, text); err != nil && fault == nil {
			fault = usage("%s: %q does not fit: %s", name, text, err)
		}
	})
	return fault
}

// listen checks the flags, opens the store and answers until the context ends.
func (l *listenFlags) listen(ctx context.Context, out, log io.Writer) error {
	cfg, err := l.config(log)
	if err != nil {
		return err
	}
	if cfg.Store, err = l.open(ctx); err != nil {
		return usage("--store: %s", err)
	}
	defer cfg.Store.Close()
	ways, err := l.push.ways(ctx)
	if err != nil {
		return err
	}
	defer ways.close()
	m := metrics.New(version())
	cfg.Store, cfg.Observer = m.Store(cfg.Store), m
	ways.measured(m)
	if l.metrics == "" {
		cfg.Metrics = m.Handler()
	} else if l.metrics, err = l.tellMetrics(ctx, cfg.Log, m.Handler()); err != nil {
		return err
	}
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp", l.address)
	if err != nil {
		return usage("--address: %s", err)
	}
	fmt.Fprintf(out, "listening on http://%s, plans are kept in %s\n", listener.Addr(), told(l.store))
	if l.metrics != "" {
		fmt.Fprintf(out, "metrics are at http://%s/metrics\n", l.metrics)
	}
	service := api.New(cfg)
	m.Watch(service, cfg.Store)
	if err := ways.begin(ctx, cfg, service); err != nil {
		return errors.Join(err, listener.Close())
	}
	return service.Serve(ctx, listener)
}

// config is the service's configuration without its store.
func (l *listenFlags) config(log io.Writer) (api.Config, error) {
	cfg := api.Config{Hosts: l.hosts, Solves: l.solves, Streams: l.streams, StreamsEach: l.streamsEach, Drain: l.drain, Version: version(), Document: description}
	if err := oneOf("--log", l.log, formatText, formatJSON, "none"); err != nil {
		return cfg, err
	}
	switch l.log {
	case formatText:
		cfg.Log = slog.New(slog.NewTextHandler(log, nil))
	case formatJSON:
		cfg.Log = slog.New(slog.NewJSONHandler(log, nil))
	}
	if l.solves < 0 {
		return cfg, usage("--solves: %d is too few; at least one plan must be made at a time", l.solves)
	}
	if err := l.limits(&cfg); err != nil {
		return cfg, err
	}
	for _, text := range l.proxies {
		network, err := netip.ParsePrefix(text)
		if err != nil {
			return cfg, usage("--trust-proxy: %q is no network such as 10.0.0.0/24", text)
		}
		cfg.Proxies = append(cfg.Proxies, network)
	}
	var err error
	if cfg.Token, err = l.token(); err != nil {
		return cfg, err
	}
	return cfg, l.admission(&cfg)
}

// limits are those of streams and of time.
func (l *listenFlags) limits(cfg *api.Config) error {
	switch {
	case l.streams < 1:
		return usage("--streams: %d is too few; at least one must be open at a time", l.streams)
	case l.streamsEach < 0:
		return usage("--streams-each: %d is too few", l.streamsEach)
	case l.drain < 0 || l.drain > time.Minute:
		return usage("--drain: %s is not from 0s to 1m", l.drain)
	case l.keep == "":
		return nil
	}
	days, found := strings.CutSuffix(l.keep, "d")
	n, err := strconv.Atoi(days)
	if err != nil || !found || n < 1 || n > 36500 {
		return usage("--keep: %q is no number of days such as 400d", l.keep)
	}
	cfg.Keep = time.Duration(n) * 24 * time.Hour
	return nil
}

// admission decides who may call: on this machine only those who use its own name (a
// web page must not reach it through a name of its own), else those with the token.
func (l *listenFlags) admission(cfg *api.Config) error {
	local, err := loopback(l.address)
	switch {
	case err != nil:
		return err
	case local:
		cfg.Hosts = append(cfg.Hosts, "localhost", "127.0.0.1", "::1")
	case !l.allowRemote:
		return usage("--address: %s can be reached from other machines; say --allow-remote if that is meant", l.address)
	case cfg.Token == "" && !l.noAuth:
		return usage("--allow-remote: give --token-file, or say --no-auth to let everybody in")
	}
	return nil
}

// loopback says whether an address can be reached from this machine only.
func loopback(address string) (bool, error) {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return false, usage("--address: %q is not host:port, such as 127.0.0.1:8018", address)
	}
	ip, err := netip.ParseAddr(host)
	return host == "localhost" || err == nil && ip.IsLoopback(), nil
}

// token reads the file of the token, "" if there is none.
func (l *listenFlags) token() (string, error) {
	if l.tokenFile == "" {
		return "", nil
	}
	text, err := os.ReadFile(l.tokenFile)
	if err != nil {
		return "", usage("--token-file: %s", err)
	}
	token := strings.TrimSpace(string(text))
	if len(token) < leastToken || strings.ContainsAny(token, " \t\r\n") {
		return "", usage("--token-file: %s must have one line of at least %d characters without blanks", l.tokenFile, leastToken)
	}
	return token, nil
}
