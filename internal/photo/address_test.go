package photo

import (
	"net/netip"
	"testing"
)

// Ranges of the IANA special-purpose address registries.
func TestPublic(t *testing.T) {
	for address, want := range map[string]bool{
		"8.8.8.8": true, "1.1.1.1": true, "2606:4700::1111": true, "172.32.0.1": true, "100.128.0.1": true,
		"127.0.0.1": false, "127.9.9.9": false, "::1": false, "10.0.0.1": false, "172.16.0.1": false, "172.31.255.255": false,
		"192.168.1.1": false, "169.254.169.254": false, "fe80::1": false, "fe80::1%eth0": false, "fd00:ec2::254": false,
		"0.0.0.0": false, "::": false, "255.255.255.255": false, "224.0.0.1": false, "ff02::1": false, "100.64.0.1": false,
		"198.18.0.1": false, "203.0.113.9": false, "240.0.0.1": false, "::ffff:127.0.0.1": false, "::ffff:10.1.1.1": false,
		"64:ff9b::7f00:1": false, "2002:7f00:1::": false, "2001:0:1::": false, "2001:db8::1": false, "192.0.0.192": false,
	} {
		if got := public(netip.MustParseAddr(address)); got != want {
			t.Errorf("%s: public %v, want %v", address, got, want)
		}
	}
}

func TestDialControl(t *testing.T) {
	for _, c := range []struct {
		address  string
		loopback bool
		want     bool
	}{
		{"127.0.0.1:80", false, false}, {"127.0.0.1:80", true, true}, {"[::1]:80", true, true}, {"10.0.0.1:443", true, false},
		{"8.8.8.8:443", false, true}, {"nonsense", true, false},
	} {
		if err := dialControl(c.loopback)("tcp", c.address, nil); (err == nil) != c.want {
			t.Errorf("%s, loopback %v: %v", c.address, c.loopback, err)
		}
	}
}
