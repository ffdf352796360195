package vcs

import (
	"bytes"
	"crypto/sha1"
	"crypto/sha256"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
)

// checksum is the one that an index ends with.
func checksum(objectFormat string) hash.Hash {
	if objectFormat == "sha256" {
		return sha256.New()
	}
	return sha1.New()
}

// intact checks the index file against the checksum at its end. Git itself does so only in "git fsck": of an index
// that was cut off, on a full disk say, "ls-files" lists zeros and shortened names as if they were files. A checksum
// of zeros stands for none (index.skipHash). There being no index is right.
func intact(path, objectFormat string) error {
	file, err := os.Open(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer func() { _ = file.Close() }()
	info, err := file.Stat()
	if err != nil || info.Size() == 0 {
		return err
	}
	sum := checksum(objectFormat)
	body := info.Size() - int64(sum.Size())
	if body < 0 {
		return fmt.Errorf("%w: %d bytes", ErrDamaged, info.Size())
	}
	if _, err := io.CopyN(sum, file, body); err != nil {
		return err
	}
	said := make([]byte, sum.Size())
	if _, err := io.ReadFull(file, said); err != nil {
		return err
	}
	if !bytes.Equal(said, sum.Sum(nil)) && !bytes.Equal(said, make([]byte, len(said))) {
		return fmt.Errorf("%w: its checksum does not match", ErrDamaged)
	}
	return nil
}
