package push

import (
	"context"
	"crypto/tls"
	"encoding/json"
	"fmt"
	"net/url"
	"strings"
	"time"

	"github.com/eclipse/paho.golang/autopaho"
	"github.com/eclipse/paho.golang/paho"
	"github.com/google/uuid"

	"example.com/cookday/api"
)

// Topics below the prefix. The name of a plan is that of [api.TopicOf].
const (
	topicStatus = "/status"   // retained: is this service there?
	topicState  = "/%s/state" // retained: the plan as it stands; empty once it is gone
	topicDue    = "/%s/due"   // one message a step
)

// BrokerConfig says which broker, and as whom.
type BrokerConfig struct {
	Address        string // mqtt://host:port, or mqtts:// for TLS
	User, Password string
	TLS            *tls.Config // nil: the roots of the machine
	Prefix         string      // of all topics: cookday
}

// Broker publishes each event at a broker, by MQTT 5 with quality of service 1.
type Broker struct {
	cfg  BrokerConfig
	name string
	conn *autopaho.ConnectionManager
}

// level is the quality of service: at least once.
const level = 1

// NewBroker begins to connect, and goes on to until the context ends. The error says what
// is wrong with the address or the prefix.
func NewBroker(ctx context.Context, cfg BrokerConfig) (*Broker, error) {
	standsFor(&cfg.Prefix, "cookday")
	u, err := url.Parse(cfg.Address)
	if err != nil || u.Hostname() == "" || u.Scheme != "mqtt" && u.Scheme != "mqtts" || u.User != nil || u.Path != "" {
		return nil, fmt.Errorf("%q is no address such as mqtt://192.168.1.20:1883 or mqtts://broker.example:8883", cfg.Address)
	}
	if strings.ContainsAny(cfg.Prefix, "+#\x00") || strings.HasPrefix(cfg.Prefix, "$") || strings.HasPrefix(cfg.Prefix, "/") || strings.HasSuffix(cfg.Prefix, "/") {
		return nil, fmt.Errorf("%q is no beginning of a topic such as cookday or house/cookday", cfg.Prefix)
	}
	if u.Port() == "" {
		u.Host += map[string]string{"mqtt": ":1883", "mqtts": ":8883"}[u.Scheme]
	}
	b := &Broker{cfg: cfg, name: "mqtt " + u.Scheme + "://" + u.Host + " " + cfg.Prefix}
	paused := func(attempt int) time.Duration { return time.Duration(min(attempt, 5)) * time.Second }
	b.conn, err = autopaho.NewConnection(ctx, autopaho.ClientConfig{
		ServerUrls: []*url.URL{u}, TlsCfg: cfg.TLS, KeepAlive: 20, ConnectTimeout: 5 * time.Second, ReconnectBackoff: paused,
		// A session that outlived its connection would send old messages after newer ones.
		CleanStartOnInitialConnection: true, SessionExpiryInterval: 0,
		ConnectUsername: cfg.User, ConnectPassword: []byte(cfg.Password),
		WillMessage: &paho.WillMessage{Topic: cfg.Prefix + topicStatus, QoS: level, Retain: true, Payload: status("offline")},
		OnConnectionUp: func(c *autopaho.ConnectionManager, _ *paho.Connack) {
			go c.Publish(ctx, b.message(topicStatus, status("online"), true)) // it must not wait here; a line that breaks comes up again
		},
		ClientConfig: paho.ClientConfig{ClientID: "cookday-" + uuid.NewString()[:8]},
	})
	return b, err
}

func status(word string) []byte { return []byte(`{"status":"` + word + `"}`) }

// Name is that of the way.
func (b *Broker) Name() string { return b.name }

// Refused is never so: what a broker does not allow today it may allow tomorrow.
func (b *Broker) Refused(error) bool { return false }

func (b *Broker) message(topic string, payload []byte, retain bool) *paho.Publish {
	return &paho.Publish{Topic: b.cfg.Prefix + topic, QoS: level, Retain: retain, Payload: payload, Properties: &paho.PublishProperties{ContentType: "application/json"}}
}

// dueMessage is a step with the id of its event.
type dueMessage struct {
	Event string `json:"event"`
	*api.Reminder
}

// Send publishes an event and the state after it, and waits until the broker has both.
func (b *Broker) Send(ctx context.Context, m Message) error {
	ctx, cancel := context.WithTimeout(ctx, answerTime)
	defer cancel()
	if err := b.conn.AwaitConnection(ctx); err != nil {
		return fmt.Errorf("the broker is not there: %w", err)
	}
	state := fmt.Sprintf(topicState, m.Topic)
	if m.Event == nil {
		return b.publish(ctx, b.message(state, nil, true))
	}
	if m.Event.Step != nil {
		text, err := json.Marshal(dueMessage{m.ID, m.Event.Step})
		if err != nil {
			return err
		}
		if err := b.publish(ctx, b.message(fmt.Sprintf(topicDue, m.Topic), text, false)); err != nil {
			return err
		}
	}
	text, err := json.Marshal(m.Event.State)
	if err != nil {
		return err
	}
	return b.publish(ctx, b.message(state, text, true))
}

// refusals begin at this reason code (MQTT 5, 2.4); below it are ways to say yes.
const refusals = 0x80

func (b *Broker) publish(ctx context.Context, p *paho.Publish) error {
	answer, err := b.conn.Publish(ctx, p)
	if err != nil {
		return err
	}
	if answer != nil && answer.ReasonCode >= refusals {
		return fmt.Errorf("the broker answers with reason %d", answer.ReasonCode)
	}
	return nil
}

// Close says that this service is not there any more, and leaves.
func (b *Broker) Close() {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if b.conn.AwaitConnection(ctx) == nil {
		b.conn.Publish(ctx, b.message(topicStatus, status("offline"), true))
	}
	b.conn.Disconnect(ctx)
}
