package email

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"time"

	"github.com/emersion/go-sasl"
)

// Account is how we log in at a mail server: with a password, or with a bearer token
// that is asked for anew at each log-in.
type Account struct {
	User     string
	Password string
	Token    func(ctx context.Context) (string, error) // nil: Password
}

// mechanism picks a way to log in that the server has.
func (a Account) mechanism(ctx context.Context, has func(string) bool) (sasl.Client, error) {
	if a.Token == nil {
		return sasl.NewPlainClient("", a.User, a.Password), nil
	}
	token, err := a.Token(ctx)
	if err != nil {
		return nil, fmt.Errorf("access token: %w", err)
	}
	if has(sasl.OAuthBearer) || !has("XOAUTH2") {
		return sasl.NewOAuthBearerClient(&sasl.OAuthBearerOptions{Username: a.User, Token: token}), nil
	}
	return &xoauth2{user: a.User, token: token}, nil
}

// xoauth2 is the forerunner of RFC 7628 that two large providers still ask for. From
// memory of their pages.
type xoauth2 struct{ user, token string }

func (x *xoauth2) Start() (string, []byte, error) {
	return "XOAUTH2", []byte("user=" + x.user + "\x01auth=Bearer " + x.token + "\x01\x01"), nil
}

// Next: the server sends its error as a challenge and wants an empty answer.
func (x *xoauth2) Next([]byte) ([]byte, error) { return []byte{}, nil }

// TokenCommand gets tokens from a program of the owner's: what it prints is the token.
func TokenCommand(command string, args ...string) func(context.Context) (string, error) {
	return func(ctx context.Context) (string, error) {
		ctx, cancel := context.WithTimeout(ctx, 30*time.Second)
		defer cancel()
		out, err := exec.CommandContext(ctx, command, args...).Output()
		if err != nil {
			return "", fmt.Errorf("token command: %w", err)
		}
		token := strings.TrimSpace(string(out))
		if token == "" || len(token) > 16<<10 || strings.ContainsAny(token, " \r\n\x01") {
			return "", errors.New("token command: printed no token")
		}
		return token, nil
	}
}
