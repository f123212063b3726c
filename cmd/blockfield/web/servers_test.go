package web_test

import (
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is written down for a server makes it answer as ours does: the headers, what may be
// kept, the types, the compressed files. The servers of Debian's packages are asked, as far
// as they are installed.
func TestServersAnswerAsOurs(t *testing.T) {
	in := ingredients(t)
	s := build(t, in, 9)
	dir, modules := t.TempDir(), folder(t, s)
	require.NoError(t, os.Chmod(dir, 0o755))
	require.NoError(t, os.Chmod(filepath.Dir(dir), 0o755))
	require.NoError(t, s.Write(dir))
	conf := func(name string, pairs ...string) string {
		return strings.NewReplacer(pairs...).Replace(string(s.File(name).Body))
	}
	for name, run := range map[string]struct {
		encodings []string
		command   func(port, work string) *exec.Cmd
	}{
		"nginx": {[]string{"gzip"}, func(port, work string) *exec.Cmd {
			text := "daemon off; pid " + work + "/pid; error_log stderr; events {} http { include /etc/nginx/mime.types; access_log off; client_body_temp_path " + work + "; " +
				conf("servers/nginx.conf", "listen 80", "listen 127.0.0.1:"+port, "/srv/blockfield", dir) + "}"
			require.NoError(t, os.WriteFile(work+"/nginx.conf", []byte(text), 0o644))
			return exec.Command("nginx", "-c", work+"/nginx.conf")
		}},
		"apache2": {[]string{"br", "gzip"}, func(port, work string) *exec.Cmd {
			text := "ServerRoot " + work + "\nServerName localhost\nListen 127.0.0.1:" + port + "\nPidFile " + work + "/pid\nErrorLog /dev/stderr\n"
			for _, module := range []string{"mpm_event", "authz_core", "mime", "dir", "headers", "rewrite", "negotiation", "env"} {
				text += "LoadModule " + module + "_module /usr/lib/apache2/modules/mod_" + module + ".so\n"
			}
			text += "TypesConfig /etc/mime.types\nDirectoryIndex index.html\nDocumentRoot " + dir + "\n<Directory " + dir + ">\nAllowOverride All\nRequire all granted\n</Directory>\n"
			require.NoError(t, os.WriteFile(work+"/apache.conf", []byte(text), 0o644))
			return exec.Command("apache2", "-X", "-f", work+"/apache.conf")
		}},
		"caddy": {[]string{"br", "gzip"}, func(port, work string) *exec.Cmd {
			text := "{\n admin off\n auto_https off\n}\n" + conf("servers/Caddyfile", "blocks.example.org", "http://127.0.0.1:"+port, "/srv/blockfield", dir)
			require.NoError(t, os.WriteFile(work+"/Caddyfile", []byte(text), 0o644))
			return exec.Command("caddy", "run", "--adapter", "caddyfile", "--config", work+"/Caddyfile")
		}},
	} {
		t.Run(name, func(t *testing.T) {
			if _, err := exec.LookPath(name); err != nil {
				t.Skipf("not run: %s is not installed", name)
			}
			l, err := net.Listen("tcp", "127.0.0.1:0")
			require.NoError(t, err)
			_, port, _ := net.SplitHostPort(l.Addr().String())
			l.Close()
			cmd := run.command(port, t.TempDir())
			var said strings.Builder
			cmd.Stderr = &said
			require.NoError(t, cmd.Start())
			cmd.WaitDelay = 5 * time.Second
			t.Cleanup(func() { cmd.Process.Signal(syscall.SIGTERM); cmd.Wait() })
			root := "http://127.0.0.1:" + port
			require.Eventually(t, func() bool {
				res, err := http.Get(root + "/")
				if err == nil {
					res.Body.Close()
				}
				return err == nil
			}, 20*time.Second, 50*time.Millisecond, "%s does not answer: %s", name, said.String())
			get := func(path, accept string) *http.Response {
				r, err := http.NewRequestWithContext(context.Background(), http.MethodGet, root+path, nil)
				require.NoError(t, err)
				r.Header.Set("Accept-Encoding", accept)
				res, err := (&http.Transport{DisableCompression: true}).RoundTrip(r)
				require.NoError(t, err)
				t.Cleanup(func() { res.Body.Close() })
				return res
			}
			ours := s.Handler()
			for _, path := range []string{"/", "/" + modules + "engine.wasm", "/" + modules + "preview.js", "/manifest.webmanifest", "/icon.svg", "/poster-small.jpg", "/service-worker.js", "/designs/s1.json"} {
				got, want := get(path, ""), ask(t, ours, "GET", path, nil)
				require.Equal(t, 200, got.StatusCode, "%s: %s", path, said.String())
				body, err := io.ReadAll(got.Body)
				require.NoError(t, err)
				wanted, err := io.ReadAll(want.Body)
				require.NoError(t, err)
				assert.Equal(t, wanted, body, path)
				for _, header := range []string{"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy", "Cross-Origin-Opener-Policy", "Cross-Origin-Resource-Policy", "Permissions-Policy", "Cache-Control"} {
					assert.Equal(t, want.Header[header], got.Header[header], "%s of %s", header, path)
				}
				assert.Equal(t, kind(want), kind(got), path)
			}
			for _, encoding := range run.encodings {
				path := "/" + modules + "engine.wasm"
				got := get(path, encoding)
				assert.Equal(t, encoding, got.Header.Get("Content-Encoding"), encoding)
				assert.Equal(t, "application/wasm", got.Header.Get("Content-Type"))
				assert.Contains(t, strings.Join(got.Header["Vary"], ","), "Accept-Encoding")
				body, err := io.ReadAll(got.Body)
				require.NoError(t, err)
				want := s.File(path[1:])
				assert.Equal(t, map[string][]byte{"br": want.Brotli, "gzip": want.Gzip}[encoding], body, fmt.Sprintf("%s as it was built", encoding))
			}
			for _, path := range []string{"/nothing", "/.htaccess"} {
				got := get(path, "")
				assert.Contains(t, []int{403, 404}, got.StatusCode, path)
				assert.NotEmpty(t, got.Header.Get("Content-Security-Policy"), path)
			}
		})
	}
}

// kind is the type of an answer, in the older of two names that scripts have.
func kind(res *http.Response) string {
	name, _, _ := strings.Cut(res.Header.Get("Content-Type"), ";")
	return strings.Replace(name, "application/javascript", "text/javascript", 1)
}
