package photo

import (
	"errors"
	"fmt"
	"net/netip"
	"syscall"
)

// ErrAddress is the error for an address that is not on the public internet.
var ErrAddress = errors.New("address is not public")

// notPublic are ranges of the IANA special-purpose registries (RFC 6890 and updates)
// that netip's own tests don't cover, and those that wrap an IPv4 address.
var notPublic = [...]netip.Prefix{
	netip.MustParsePrefix("0.0.0.0/8"),
	netip.MustParsePrefix("100.64.0.0/10"),   // shared, RFC 6598
	netip.MustParsePrefix("192.0.0.0/24"),    // protocol assignments
	netip.MustParsePrefix("192.0.2.0/24"),    // documentation, RFC 5737
	netip.MustParsePrefix("192.88.99.0/24"),  // 6to4 relays
	netip.MustParsePrefix("198.18.0.0/15"),   // benchmarking
	netip.MustParsePrefix("198.51.100.0/24"), // documentation
	netip.MustParsePrefix("203.0.113.0/24"),  // documentation
	netip.MustParsePrefix("240.0.0.0/4"),     // reserved, broadcast
	netip.MustParsePrefix("64:ff9b::/96"),    // NAT64
	netip.MustParsePrefix("64:ff9b:1::/48"),  // local NAT64
	netip.MustParsePrefix("100::/64"),        // discard
	netip.MustParsePrefix("2001::/23"),       // protocol assignments, Teredo
	netip.MustParsePrefix("2001:db8::/32"),   // documentation
	netip.MustParsePrefix("2002::/16"),       // 6to4
	netip.MustParsePrefix("3fff::/20"),       // documentation
	netip.MustParsePrefix("fec0::/10"),       // site-local
}

// public reports whether an address is one that a carrier's server can have.
func public(a netip.Addr) bool {
	a = a.Unmap().WithZone("")
	if !a.IsGlobalUnicast() || a.IsPrivate() || a.IsLoopback() || a.IsLinkLocalUnicast() {
		return false
	}
	for _, p := range notPublic {
		if p.Contains(a) {
			return false
		}
	}
	return true
}

// dialControl looks at the address that is really dialled, after names are resolved,
// so that no name can lead into the shop's own network.
func dialControl(allowLoopback bool) func(network, address string, _ syscall.RawConn) error {
	return func(_, address string, _ syscall.RawConn) error {
		to, err := netip.ParseAddrPort(address)
		if err != nil {
			return fmt.Errorf("%w: %w", ErrAddress, err)
		}
		if public(to.Addr()) || allowLoopback && to.Addr().Unmap().IsLoopback() {
			return nil
		}
		return ErrAddress
	}
}
