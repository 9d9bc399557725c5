package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// emit makes the whole output first and only then writes it: to the file, if one
// is named, else to standard output. A run that fails leaves nothing behind.
func emit(stdout io.Writer, file string, write func(w io.Writer) error) error {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		return err
	}
	if file == "" {
		_, err := stdout.Write(b.Bytes())
		return err
	}
	err := replaceFile(file, b.Bytes())
	if errors.Is(err, fs.ErrNotExist) {
		return usage("%s: there is no such folder to write into", file)
	}
	return fileTrouble(file, err)
}

// replaceFile puts data in the place of a file at once: whoever reads it meanwhile
// sees the old one or the new one, never half of it.
func replaceFile(name string, data []byte) error {
	if target, err := filepath.EvalSymlinks(name); err == nil {
		name = target
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		return os.WriteFile(name, data, 0) // a device or a pipe is not replaced
	}
	temporary := filepath.Join(filepath.Dir(name), fmt.Sprintf(".%s.%d", filepath.Base(name), os.Getpid()))
	f, err := os.OpenFile(temporary, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
	if err != nil {
		return err
	}
	defer os.Remove(temporary) // fails where the rename has worked
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return err
	}
	return os.Rename(temporary, name)
}
