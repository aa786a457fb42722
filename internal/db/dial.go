package db

import (
	"context"
	"net"
	"strings"
	"syscall"
	"time"
)

// deadAfter is after how long without any sign of life a database's host counts as gone.
// A host that lost its power says nothing, and by its defaults the kernel would wait a
// quarter of an hour for it.
const deadAfter = 20 * time.Second

// dialer notices hosts that went silent, both while nothing is asked (keep-alive) and while
// an answer is waited for (TCP_USER_TIMEOUT, RFC 5482).
var dialer = net.Dialer{
	KeepAliveConfig: net.KeepAliveConfig{Enable: true, Idle: deadAfter / 4, Interval: deadAfter / 4, Count: 3},
	Control: func(network, _ string, c syscall.RawConn) error {
		if !strings.HasPrefix(network, "tcp") {
			return nil
		}
		var set error
		if err := c.Control(func(fd uintptr) { set = boundSilence(fd, deadAfter) }); err != nil {
			return err
		}
		return set
	},
}

func dial(ctx context.Context, network, address string) (net.Conn, error) {
	return dialer.DialContext(ctx, network, address)
}
