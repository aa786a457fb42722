package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
)

// replaceFile puts new contents in place of a file's, whole or not at all: who reads it
// meanwhile gets the old or the new one. Its owner and mode stay.
func replaceFile(path string, contents []byte) (err error) {
	path, err = filepath.EvalSymlinks(path)
	if err != nil {
		return fmt.Errorf("replace: %w", err)
	}
	info, err := os.Stat(path)
	if err != nil {
		return fmt.Errorf("replace: %w", err)
	}
	side, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-")
	if err != nil {
		return fmt.Errorf("replace: %w", err)
	}
	defer func() {
		if err != nil {
			err = fmt.Errorf("replace %s: %w", path, errors.Join(err, os.Remove(side.Name())))
		}
	}()
	_, err = side.Write(contents)
	err = errors.Join(err, side.Chmod(info.Mode().Perm()))
	if was, ok := info.Sys().(*syscall.Stat_t); ok && err == nil && (int(was.Uid) != os.Geteuid() || int(was.Gid) != os.Getegid()) {
		err = side.Chown(int(was.Uid), int(was.Gid))
	}
	if err = errors.Join(err, side.Sync(), side.Close()); err != nil {
		return err
	}
	return os.Rename(side.Name(), path)
}
