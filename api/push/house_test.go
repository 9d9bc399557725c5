package push

import (
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/json"
	"encoding/pem"
	"fmt"
	"math/big"
	"net"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/eclipse/paho.golang/autopaho"
	"github.com/eclipse/paho.golang/paho"
)

// mosquitto is a real broker, with TLS, a user and a password.
type mosquitto struct {
	dir, port string
	flags     []string
	trust     *tls.Config
	cmd       *exec.Cmd
	kills     int
}

func written(t *testing.T, dir, name, text string) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func newMosquitto(t *testing.T, dir string) *mosquitto {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	_, port, _ := net.SplitHostPort(l.Addr().String())
	l.Close()
	m := &mosquitto{dir: dir, port: port}
	ca := m.certificate(t)
	passwords := filepath.Join(dir, "passwords")
	if out, err := exec.Command("mosquitto_passwd", "-c", "-b", passwords, "house", "tongs").CombinedOutput(); err != nil {
		t.Fatalf("%v %s", err, out)
	}
	// What it has said yes to must be there after a kill: it saves with each change.
	written(t, dir, "mosquitto.conf", fmt.Sprintf(`listener %s 127.0.0.1
certfile %s/cert.pem
keyfile %s/key.pem
allow_anonymous false
password_file %s
persistence true
persistence_location %s/
autosave_interval 1
autosave_on_changes true
max_queued_messages 0
user root
`, port, dir, dir, passwords, dir))
	m.flags = []string{"--mqtt", "mqtts://127.0.0.1:" + port, "--mqtt-ca", ca, "--mqtt-credentials", written(t, dir, "user", "house\ntongs\n")}
	return m
}

// certificate writes one for this machine, which signs itself.
func (m *mosquitto) certificate(t *testing.T) string {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	c := &x509.Certificate{SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "broker of a test"}, NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(24 * time.Hour),
		IsCA: true, BasicConstraintsValid: true, KeyUsage: x509.KeyUsageDigitalSignature | x509.KeyUsageCertSign, IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}}
	der, err := x509.CreateCertificate(rand.Reader, c, c, &key.PublicKey, key)
	if err != nil {
		t.Fatal(err)
	}
	private, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		t.Fatal(err)
	}
	text := string(pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}))
	written(t, m.dir, "key.pem", string(pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: private})))
	pool := x509.NewCertPool()
	pool.AppendCertsFromPEM([]byte(text))
	m.trust = &tls.Config{RootCAs: pool}
	return written(t, m.dir, "cert.pem", text)
}

func (m *mosquitto) start(t *testing.T) {
	t.Helper()
	m.cmd = exec.Command(*broker, "-c", filepath.Join(m.dir, "mosquitto.conf"))
	if err := m.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { m.cmd.Process.Kill(); m.cmd.Wait() })
	for range 200 {
		if c, err := net.Dial("tcp", "127.0.0.1:"+m.port); err == nil {
			c.Close()
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatal("the broker did not start")
}

func (m *mosquitto) restart(t *testing.T) {
	t.Helper()
	m.kills++
	m.cmd.Process.Kill()
	m.cmd.Wait()
	time.Sleep(300 * time.Millisecond)
	m.start(t)
}

// listen follows all plans as a house would, with a session that outlives the line.
func (m *mosquitto) listen(t *testing.T) *ear {
	t.Helper()
	e := newEar(t)
	e.steps = true
	u, err := url.Parse("mqtts://127.0.0.1:" + m.port)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	t.Cleanup(cancel)
	conn, err := autopaho.NewConnection(ctx, autopaho.ClientConfig{
		ServerUrls: []*url.URL{u}, TlsCfg: m.trust, KeepAlive: 5, SessionExpiryInterval: 3600, ConnectUsername: "house", ConnectPassword: []byte("tongs"),
		ReconnectBackoff: func(int) time.Duration { return 50 * time.Millisecond },
		OnConnectionUp: func(c *autopaho.ConnectionManager, _ *paho.Connack) {
			go c.Subscribe(ctx, &paho.Subscribe{Subscriptions: []paho.SubscribeOptions{{Topic: "cookday/+/due", QoS: 1}}})
		},
		ClientConfig: paho.ClientConfig{ClientID: "the-house", OnPublishReceived: []func(paho.PublishReceived) (bool, error){func(r paho.PublishReceived) (bool, error) {
			var d struct{ Event string }
			if err := json.Unmarshal(r.Packet.Payload, &d); err != nil {
				t.Error(err)
			}
			e.hear(strings.Split(r.Packet.Topic, "/")[1], d.Event, string(r.Packet.Payload))
			return true, nil
		}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := conn.AwaitConnection(ctx); err != nil {
		t.Fatal(err)
	}
	time.Sleep(200 * time.Millisecond) // it has subscribed by then
	return e
}
