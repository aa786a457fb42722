package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/deploy"
)

const stockTable = "code,part,size,layers,material,colors,finish\nL3030,dome,30 x 30,1,acrylic,clear,\n"

func TestShopImport(t *testing.T) {
	dir := t.TempDir()
	file, table, wrong := filepath.Join(dir, "shop.yaml"), filepath.Join(dir, "stock.csv"), filepath.Join(dir, "wrong.csv")
	write := func(path, text string, mode os.FileMode) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), mode); err != nil {
			t.Fatal(err)
		}
	}
	write(file, deploy.ExampleShop, 0o640)
	write(table, stockTable, 0o600)
	write(wrong, stockTable+"L3131,door,3-Jan,9,acrylic,clear,\n", 0o600)
	_, errs, status := runProgram(t, []string{"SHOP_FILE=" + file}, "", "shop", "import", "stock", wrong)
	for _, want := range []string{"line 3, part: \"door\"", "line 3, size: \"3-Jan\" is a date", "line 3, layers: \"9\"", "nothing was taken over"} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is not said in:\n%s", want, errs)
		}
	}
	out, errs2, status2 := runProgram(t, nil, "", "shop", "import", "stock", table, "--shop", file, "--dry-run")
	if status != 1 || status2 != 0 || !strings.Contains(out, "1 new: L3030") || !strings.Contains(out, "7 gone") || !strings.Contains(out, "dry run") {
		t.Errorf("status %d and %d: %s%s", status, status2, out, errs2)
	}
	if b, err := os.ReadFile(file); err != nil || string(b) != deploy.ExampleShop {
		t.Fatalf("the shop file was changed: %v", err)
	}
	if out, errs, status := runProgram(t, nil, "", "shop", "import", "stock", table, "--shop", file); status != 0 || !strings.Contains(out, "has it now") {
		t.Errorf("status %d: %s%s", status, out, errs)
	}
	info, err := os.Stat(file)
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("%v, %v", info, err)
	}
	if out, _, status := runProgram(t, nil, "", "shop", "export", "stock", "--shop", file); status != 0 || !strings.Contains(out, "L3030,dome,30 x 30,,1,acrylic,clear,\n") || strings.Contains(out, "D2626") {
		t.Errorf("status %d: %s", status, out)
	}
	if out, _, status := runProgram(t, nil, "", "shop", "export", "prices"); status != 0 || !strings.HasPrefix(out, "part,price,choice,value\ndome,base,,$46\n") {
		t.Errorf("status %d: %s", status, out)
	}
	if left, err := filepath.Glob(filepath.Join(dir, ".*")); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
	if out, _, status := runProgram(t, nil, "", "shop", "schema"); status != 0 || out != deploy.ShopSchema {
		t.Errorf("status %d: the schema is another", status)
	}
}
