package push

import (
	"context"
	"encoding/json"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/eclipse/paho.golang/autopaho"
	"github.com/eclipse/paho.golang/paho"

	"example.com/cookday/api"
	"example.com/cookday/schedule"
)

// Addresses and prefixes that do not fit are refused before anything is sent.
func TestBrokerAddresses(t *testing.T) {
	for _, bad := range []BrokerConfig{{Address: ""}, {Address: "127.0.0.1:1883"}, {Address: "http://127.0.0.1"}, {Address: "mqtt://"}, {Address: "mqtt://u:p@127.0.0.1"},
		{Address: "mqtt://127.0.0.1/x"}, {Address: "mqtt://127.0.0.1", Prefix: "a/#"}, {Address: "mqtt://127.0.0.1", Prefix: "$SYS"}, {Address: "mqtt://127.0.0.1", Prefix: "a/"}} {
		if _, err := NewBroker(t.Context(), bad); err == nil {
			t.Errorf("%+v is taken", bad)
		}
	}
}

// looker is a client that looks at everything below the prefix, as a display does.
type looker struct {
	mu       sync.Mutex
	newest   map[string]string // by topic
	retained map[string]bool
}

func (l *looker) at(topic string) string { l.mu.Lock(); defer l.mu.Unlock(); return l.newest[topic] }

func (m *mosquitto) look(t *testing.T) *looker {
	t.Helper()
	l := &looker{newest: map[string]string{}, retained: map[string]bool{}}
	u, err := url.Parse("mqtts://127.0.0.1:" + m.port)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	t.Cleanup(cancel)
	_, err = autopaho.NewConnection(ctx, autopaho.ClientConfig{ServerUrls: []*url.URL{u}, TlsCfg: m.trust, KeepAlive: 20, CleanStartOnInitialConnection: true, ConnectUsername: "house", ConnectPassword: []byte("tongs"),
		OnConnectionUp: func(c *autopaho.ConnectionManager, _ *paho.Connack) {
			go c.Subscribe(ctx, &paho.Subscribe{Subscriptions: []paho.SubscribeOptions{{Topic: "cookday/#", QoS: 1}}})
		},
		ClientConfig: paho.ClientConfig{OnPublishReceived: []func(paho.PublishReceived) (bool, error){func(r paho.PublishReceived) (bool, error) {
			l.mu.Lock()
			defer l.mu.Unlock()
			l.newest[r.Packet.Topic] = string(r.Packet.Payload)
			l.retained[r.Packet.Topic] = r.Packet.Retain
			return true, nil
		}}}})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// Against a real broker: who comes later sees the plan as it stands, a step is told once
// and not kept, nothing published holds the owner's secret, the end clears the state, and
// a service that is killed is said to be away.
func TestBrokerTells(t *testing.T) {
	if *broker == "" {
		t.Skip("needs a broker: .ci/full.d/push.sh")
	}
	m := newMosquitto(t, t.TempDir())
	m.start(t)
	life, end := context.WithCancel(context.Background())
	b, err := NewBroker(life, BrokerConfig{Address: "mqtts://127.0.0.1:" + m.port, User: "house", Password: "tongs", TLS: m.trust})
	if err != nil {
		t.Fatal(err)
	}
	h := newHouse(t, onDisk(t))
	h.ways = []Way{b}
	h.begin()
	early := m.look(t)
	h.until("online", func() bool { return early.at("cookday/status") == `{"status":"online"}` })
	p := h.planned("")
	topic := "cookday/" + api.TopicOf(p.ID)
	state := func(l *looker) (s api.PlanState) {
		json.Unmarshal([]byte(l.at(topic+"/state")), &s)
		return s
	}
	h.until("the plan", func() bool { return state(early).Event == "0.0" })
	if s := state(early); s.Revision != 0 || !s.ServeAt.Equal(p.ServeAt) || s.NextText == "" || s.Plan != api.TopicOf(p.ID) {
		t.Errorf("%+v", s)
	}
	i := slices.IndexFunc(p.Steps, func(s schedule.Step) bool { return s.Kind == "put-on" })
	h.clock.set(p.Steps[i].At)
	h.until("the step", func() bool { return strings.Contains(early.at(topic+"/due"), `"kind":"put-on"`) })
	late := m.look(t)
	h.until("the state for who comes late", func() bool { return state(late).NowKind == "put-on" })
	late.mu.Lock()
	if !late.retained[topic+"/state"] || late.newest[topic+"/due"] != "" {
		t.Error("the state is not kept, or a step is")
	}
	for topic, text := range late.newest {
		if strings.Contains(topic+text, p.ID) {
			t.Errorf("%s holds the owner's secret: %s", topic, text)
		}
	}
	late.mu.Unlock()
	h.call(http.MethodDelete, "/v1/plans/"+p.ID, "")
	h.until("the end", func() bool {
		early.mu.Lock()
		defer early.mu.Unlock()
		s, ok := early.newest[topic+"/state"]
		return ok && s == ""
	})
	h.end()
	b.conn.TerminateConnectionForTest() // as if the process were killed: no word of farewell
	end()
	h.until("offline", func() bool { return m.look(t).awaits("cookday/status") == `{"status":"offline"}` })
}

// awaits looks for a topic that is kept.
func (l *looker) awaits(topic string) string {
	for range 100 {
		if s := l.at(topic); s != "" {
			return s
		}
		time.Sleep(10 * time.Millisecond)
	}
	return ""
}
