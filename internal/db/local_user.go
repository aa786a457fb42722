package db

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"os/user"
	"path/filepath"
	"strconv"
	"syscall"
	"time"
)

// serverUser is whom the private server runs as: ourselves, or, as root, somebody
// without rights.
type serverUser struct {
	uid, gid   int
	name       string
	credential *syscall.Credential // nil: ourselves
}

func findServerUser() (*serverUser, error) {
	if os.Getuid() != 0 {
		return &serverUser{uid: os.Getuid(), gid: os.Getgid()}, nil
	}
	for _, name := range []string{"postgres", "nobody"} {
		u, err := user.Lookup(name)
		if err != nil {
			continue
		}
		uid, err := strconv.Atoi(u.Uid)
		if err != nil {
			continue
		}
		gid, err := strconv.Atoi(u.Gid)
		if err != nil {
			continue
		}
		return &serverUser{uid: uid, gid: gid, name: name, credential: &syscall.Credential{
			Uid: uint32(uid), Gid: uint32(gid), Groups: []uint32{}}}, nil
	}
	return nil, errors.New("root can't run Postgres, and there is neither a user postgres nor a user nobody to run it as")
}

// makeFolder makes a folder that only this user may enter. One that is there must
// already be so: another's folder could be a trap.
func (u *serverUser) makeFolder(dir string) error {
	if err := os.MkdirAll(filepath.Dir(dir), 0o755); err != nil {
		return err
	}
	if err := os.Mkdir(dir, 0o700); err != nil && !errors.Is(err, os.ErrExist) {
		return err
	}
	// Looked at before the owner: another starter gives the folder away before it puts
	// anything in, so one that is not empty has its last owner.
	empty := isEmpty(dir)
	info, err := os.Lstat(dir)
	if err != nil {
		return err
	}
	if !info.IsDir() {
		return fmt.Errorf("%s is not a folder", dir)
	}
	if err := u.own(dir, info, empty); err != nil {
		return err
	}
	return u.checkReach(dir)
}

// own makes the folder this user's where it is root's own, and refuses any other's.
func (u *serverUser) own(dir string, info os.FileInfo, empty bool) error {
	owner := int(info.Sys().(*syscall.Stat_t).Uid)
	switch {
	case owner == u.uid:
		return os.Chmod(dir, 0o700)
	case owner == os.Getuid() && empty:
		if err := os.Chown(dir, u.uid, u.gid); err != nil {
			return err
		}
		return os.Chmod(dir, 0o700)
	}
	return fmt.Errorf("%s belongs to user id %d, not to %d, whom the server runs as", dir, owner, u.uid)
}

func isEmpty(dir string) bool {
	entries, err := os.ReadDir(dir)
	return err == nil && len(entries) == 0
}

// checkReach says which parent folder keeps another user out, where one does.
func (u *serverUser) checkReach(dir string) error {
	if u.credential == nil {
		return nil
	}
	for parent := filepath.Dir(dir); parent != "/"; parent = filepath.Dir(parent) {
		info, err := os.Stat(parent)
		if err != nil {
			return err
		}
		if info.Mode().Perm()&0o001 == 0 && int(info.Sys().(*syscall.Stat_t).Uid) != u.uid {
			return fmt.Errorf("user %s, whom the server runs as, may not enter %s: choose a folder under /var/lib or /var/tmp", u.name, parent)
		}
	}
	return nil
}

// maxSocketPath is what fits into a Unix socket's address (sun_path, 104 bytes on
// macOS, 108 on Linux), with its end mark.
const maxSocketPath = 103

// socketFolder is where the server's socket is: in its folder, or where that path is
// too long for a socket, in a short one that follows from it.
func socketFolder(dir string, u *serverUser) (string, error) {
	socket := filepath.Join(dir, "socket")
	if len(socket)+len("/.s.PGSQL.5432.lock") > maxSocketPath {
		sum := sha256.Sum256([]byte(dir))
		socket = filepath.Join("/tmp", "intake-pg-"+hex.EncodeToString(sum[:8]))
	}
	return socket, u.makeFolder(socket)
}

// lockFolder waits until no other program is starting a server in dir.
func lockFolder(ctx context.Context, dir string) (unlock func(), err error) {
	f, err := os.OpenFile(filepath.Join(dir, "lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		if err == nil {
			return func() { f.Close() }, nil // closing gives the lock back
		}
		if !errors.Is(err, syscall.EWOULDBLOCK) {
			f.Close()
			return nil, fmt.Errorf("lock %s: %w", f.Name(), err)
		}
		select {
		case <-ctx.Done():
			f.Close()
			return nil, fmt.Errorf("wait for another start in %s: %w", dir, ctx.Err())
		case <-time.After(20 * time.Millisecond):
		}
	}
}
