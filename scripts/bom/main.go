// Command bom writes the bill of materials of a built program: which modules, in which
// versions and with which sums, went into it, as CycloneDX JSON. All of it comes from what
// the Go toolchain has put into the program itself, so the same program gives the same
// bill.
package main

import (
	"bytes"
	"crypto/sha256"
	"debug/buildinfo"
	"encoding/hex"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	cdx "github.com/CycloneDX/cyclonedx-go"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: bom PROGRAM > PROGRAM.cdx.json")
		os.Exit(2)
	}
	text, err := billOf(os.Args[1])
	if err == nil {
		_, err = os.Stdout.Write(text)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "bom:", err)
		os.Exit(1)
	}
}

// billOf is the bill of the program at a path.
func billOf(path string) ([]byte, error) {
	info, err := buildinfo.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("what is in the program: %w", err)
	}
	program, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("read the program: %w", err)
	}
	sum := sha256.Sum256(program)
	return bill(filepath.Base(path), info, sum)
}

func bill(name string, info *debug.BuildInfo, sum [sha256.Size]byte) ([]byte, error) {
	b := cdx.NewBOM()
	b.SerialNumber = "urn:uuid:" + uuidOf(sum)
	main := cdx.Component{BOMRef: "program", Type: cdx.ComponentTypeApplication, Name: name, Version: info.Main.Version,
		Hashes:     &[]cdx.Hash{{Algorithm: cdx.HashAlgoSHA256, Value: hex.EncodeToString(sum[:])}},
		Properties: settings(info)}
	if main.Version == "" {
		main.Version = "(devel)"
	}
	b.Metadata = &cdx.Metadata{Component: &main, Timestamp: setting(info, "vcs.time")}
	parts := []cdx.Component{{BOMRef: "go", Type: cdx.ComponentTypeLibrary, Name: "std", Version: info.GoVersion,
		PackageURL: "pkg:golang/std@" + strings.TrimPrefix(info.GoVersion, "go"), Description: "The standard library of Go."}}
	refs := []string{"go"}
	for _, m := range info.Deps {
		for m.Replace != nil {
			m = m.Replace
		}
		ref := "pkg:golang/" + m.Path + "@" + url.PathEscape(m.Version)
		parts = append(parts, cdx.Component{BOMRef: ref, Type: cdx.ComponentTypeLibrary, Name: m.Path, Version: m.Version, PackageURL: ref,
			Properties: &[]cdx.Property{{Name: "go.sum", Value: m.Sum}}})
		refs = append(refs, ref)
	}
	b.Components = &parts
	b.Dependencies = &[]cdx.Dependency{{Ref: "program", Dependencies: &refs}}
	var out bytes.Buffer
	if err := cdx.NewBOMEncoder(&out, cdx.BOMFileFormatJSON).SetPretty(true).EncodeVersion(b, cdx.SpecVersion1_6); err != nil {
		return nil, fmt.Errorf("write the bill: %w", err)
	}
	return out.Bytes(), nil
}

// settings are those of the build that bear on what was built.
func settings(info *debug.BuildInfo) *[]cdx.Property {
	out := []cdx.Property{}
	for _, s := range info.Settings {
		switch s.Key {
		case "GOOS", "GOARCH", "CGO_ENABLED", "-tags", "-trimpath", "-ldflags", "vcs.revision", "vcs.modified":
			out = append(out, cdx.Property{Name: s.Key, Value: s.Value})
		}
	}
	return &out
}

func setting(info *debug.BuildInfo, key string) string {
	for _, s := range info.Settings {
		if s.Key == key {
			return s.Value
		}
	}
	return ""
}

// uuidOf makes a UUID of version 8 (RFC 9562, of one's own making) of the program's sum.
func uuidOf(sum [sha256.Size]byte) string {
	sum[6], sum[8] = sum[6]&0x0F|0x80, sum[8]&0x3F|0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", sum[0:4], sum[4:6], sum[6:8], sum[8:10], sum[10:16])
}
