package push

import (
	"fmt"
	"net"
	"net/netip"
	"syscall"
)

// reserved are networks that lead to this machine, into the house or to a provider's
// insides, beside those that [netip.Addr] knows (IANA's registries of special addresses).
var reserved = []netip.Prefix{
	netip.MustParsePrefix("0.0.0.0/8"), netip.MustParsePrefix("100.64.0.0/10"), netip.MustParsePrefix("192.0.0.0/24"),
	netip.MustParsePrefix("198.18.0.0/15"), netip.MustParsePrefix("240.0.0.0/4"), netip.MustParsePrefix("fec0::/10"),
}

// through are networks whose addresses hold one of the older kind in their last bytes.
var through = []netip.Prefix{netip.MustParsePrefix("64:ff9b::/96"), netip.MustParsePrefix("::/96")}

// private says whether an address is none of the open net.
func private(a netip.Addr) bool {
	a = a.Unmap().WithZone("")
	for _, p := range through {
		if p.Contains(a) {
			b := a.As16()
			return private(netip.AddrFrom4([4]byte(b[12:])))
		}
	}
	if !a.IsGlobalUnicast() || a.IsPrivate() {
		return true
	}
	for _, p := range reserved {
		if p.Contains(a) {
			return true
		}
	}
	return false
}

// publicOnly refuses a connection to a private address, after its name was looked up.
func publicOnly(_, address string, _ syscall.RawConn) error {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return err
	}
	a, err := netip.ParseAddr(host)
	if err != nil {
		return err
	}
	if private(a) {
		return fmt.Errorf("%s is a private address; say --webhook-private if that is meant", a)
	}
	return nil
}
