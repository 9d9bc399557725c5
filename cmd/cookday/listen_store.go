package main

import (
	"context"
	"net/url"
	"os"
	"path/filepath"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
)

// open opens the store that the flag names.
func (l *listenFlags) open(ctx context.Context) (api.Store, error) {
	switch {
	case l.store == storeMemory:
		return store.NewMemory(), nil
	case store.IsPostgres(l.store):
		return store.OpenPostgres(ctx, l.store)
	case l.store == "":
		file, err := usualStore()
		if err != nil {
			return nil, err
		}
		l.store = file
		if err := os.MkdirAll(filepath.Dir(l.store), 0o700); err != nil {
			return nil, err
		}
	}
	return store.OpenFile(ctx, l.store)
}

// told is the name of a store without what is secret of it.
func told(name string) string {
	if !store.IsPostgres(name) {
		return name
	}
	u, err := url.Parse(name)
	if err != nil {
		return "a database"
	}
	return (&url.URL{Scheme: u.Scheme, Host: u.Host, Path: u.Path}).String()
}
