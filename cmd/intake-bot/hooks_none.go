//go:build !torture

package main

func readHooks() (hooks, error) { return hooks{}, nil }
