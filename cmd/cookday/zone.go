package main

import (
	"os"
	"path/filepath"
	"strings"
	"time"
)

// machineZone is the name of the time zone that this machine lives in; empty where it
// does not say.
func machineZone() string {
	if name, ok := os.LookupEnv("TZ"); ok {
		return zoneNamed(strings.TrimPrefix(name, ":"))
	}
	if file, err := filepath.EvalSymlinks("/etc/localtime"); err == nil {
		if _, name, ok := strings.Cut(filepath.ToSlash(file), "zoneinfo/"); ok {
			return zoneNamed(name)
		}
	}
	if text, err := os.ReadFile("/etc/timezone"); err == nil {
		return zoneNamed(strings.TrimSpace(string(text)))
	}
	return ""
}

// zoneNamed is the name of a place's time zone; empty for any other.
func zoneNamed(name string) string {
	name = strings.TrimPrefix(name, "posix/")
	if _, err := time.LoadLocation(name); err != nil || !strings.Contains(name, "/") || strings.HasPrefix(name, "Etc/") {
		return "" // a server's clock says nothing of where its cook lives
	}
	return name
}
