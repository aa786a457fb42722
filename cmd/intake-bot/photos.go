package main

import (
	"net/netip"
	"net/url"
	"time"

	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/photo"
)

// photoRoom opens what customers send: photos are fetched from the carrier and nobody else.
func photoRoom(c carrierSettings, wait time.Duration) *intake.PhotoRoom {
	credentials, store := photo.CarrierHosts()
	set := photo.FetchSettings{User: c.account, Password: c.token, CredentialHosts: credentials, Hosts: store}
	if host, near := hostOf(c.apiURL); host != "" {
		set.CredentialHosts, set.Hosts, set.Loopback = []string{host}, nil, near
	}
	return &intake.PhotoRoom{Lab: photo.NewLab(photo.Limits{}), Fetcher: photo.NewFetcher(set), Wait: wait}
}

// hostOf is the host of another server in the carrier's place, and whether it is on this
// machine: only there may it be spoken to without TLS.
func hostOf(address string) (host string, near bool) {
	u, err := url.Parse(address)
	if err != nil || address == "" {
		return "", false
	}
	ip, err := netip.ParseAddr(u.Hostname())
	return u.Hostname(), err == nil && ip.IsLoopback() || u.Hostname() == "localhost"
}
