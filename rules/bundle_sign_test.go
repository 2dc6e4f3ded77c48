package rules

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/rand"
	"crypto/rsa"
	"crypto/x509"
	"encoding/pem"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// keyPair writes the two halves of a new key.
func keyPair(t *testing.T) (private, public string) {
	t.Helper()
	key, err := rsa.GenerateKey(rand.Reader, 2048)
	require.NoError(t, err)
	half, err := x509.MarshalPKIXPublicKey(&key.PublicKey)
	require.NoError(t, err)
	private, public = filepath.Join(t.TempDir(), "private.pem"), filepath.Join(t.TempDir(), "public.pem")
	for path, block := range map[string]*pem.Block{
		private: {Type: "RSA PRIVATE KEY", Bytes: x509.MarshalPKCS1PrivateKey(key)}, public: {Type: "PUBLIC KEY", Bytes: half},
	} {
		require.NoError(t, os.WriteFile(path, pem.EncodeToMemory(block), 0o600))
	}
	return private, public
}

// unlike copies a bundle with one byte of one of its files changed.
func unlike(t *testing.T, path, ending string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	unzipped, err := gzip.NewReader(bytes.NewReader(text))
	require.NoError(t, err)
	in := tar.NewReader(unzipped)
	var out bytes.Buffer
	zipped := gzip.NewWriter(&out)
	w, changed := tar.NewWriter(zipped), 0
	for {
		head, err := in.Next()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		held, err := io.ReadAll(in)
		require.NoError(t, err)
		if at := bytes.Index(held, []byte(" > ")); strings.HasSuffix(head.Name, ending) && at > 0 {
			held[at+1] = '<'
			changed++
		}
		require.NoError(t, w.WriteHeader(head))
		_, err = w.Write(held)
		require.NoError(t, err)
	}
	require.Equal(t, 1, changed)
	require.NoError(t, errors.Join(w.Close(), zipped.Close()))
	other := filepath.Join(t.TempDir(), "other.tar.gz")
	require.NoError(t, os.WriteFile(other, out.Bytes(), 0o600))
	return other
}

// TestStockOPATakesASignedBundleOnlyAsItWasSigned has the program opa sign the
// bundle and verify it, as it is and with one byte of a rule changed.
func TestStockOPATakesASignedBundleOnlyAsItWasSigned(t *testing.T) {
	opa, plain := stockOPA(t), bundleOf(t, withYard(t))
	private, public := keyPair(t)
	_, another := keyPair(t)
	signed := filepath.Join(t.TempDir(), "signed.tar.gz")
	out, err := exec.Command(opa, "build", "--bundle", plain, "--signing-key", private, "--output", signed).CombinedOutput()
	require.NoError(t, err, "%s", out)
	verify := func(path, key string) (string, error) {
		// build signs what it has verified
		again := filepath.Join(t.TempDir(), "again.tar.gz")
		out, err := exec.Command(opa, "build", "--bundle", path, "--verification-key", key, "--signing-key", private, "--output", again).CombinedOutput()
		return string(out), err
	}
	said, err := verify(signed, public)
	require.NoError(t, err, said)
	for name, c := range map[string]struct{ path, key, want string }{
		"a byte of ours changed":       {unlike(t, signed, "/device_too_far.rego"), public, "digest mismatch"},
		"a byte of the yard's changed": {unlike(t, signed, "/line_long.rego"), public, "digest mismatch"},
		"another's key":                {signed, another, "verif"},
		"unsigned":                     {plain, public, "missing .signatures.json"},
	} {
		said, err := verify(c.path, c.key)
		require.Error(t, err, name)
		assert.Contains(t, said, c.want, name)
	}
}
