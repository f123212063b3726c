package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"time"
)

// How long a reader may take. The site is small and lies in memory; only a slow
// line takes long.
const (
	headerTimeout = 10 * time.Second
	writeTimeout  = 5 * time.Minute
	idleTimeout   = 2 * time.Minute
	// farewell is how long answers that are under way may take at the end.
	farewell = 5 * time.Second
)

// serve serves the site from memory until ctx ends.
func serve(ctx context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	addr := flags.String("addr", "127.0.0.1:8080", "")
	settings := flags.String("settings", "", "")
	rest, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(rest) > 0 {
		return badInput, errUsage
	}
	if host, _, err := net.SplitHostPort(*addr); err == nil && host == "" || *addr == "" {
		return badInput, fmt.Errorf("-addr: %q names no host (allowed HOST:PORT, such as 127.0.0.1:8080; 0.0.0.0:8080 for every network)", *addr)
	}
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp", *addr)
	if err != nil {
		return badInput, fmt.Errorf("-addr: %w", err)
	}
	defer listener.Close()
	built, err := buildSite(quickBrotli, *settings, s)
	if err != nil {
		return badInput, err
	}
	server := &http.Server{
		Handler:           built.Handler(),
		ReadHeaderTimeout: headerTimeout,
		WriteTimeout:      writeTimeout,
		IdleTimeout:       idleTimeout,
	}
	fmt.Fprintf(s.Out, "Blockfield is at http://%s/ (end it with Ctrl+C)\n", listener.Addr())
	return done, serveUntil(ctx, server, listener)
}

// serveUntil serves until ctx ends, then lets answers under way finish.
func serveUntil(ctx context.Context, server *http.Server, listener net.Listener) error {
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.WithoutCancel(ctx), farewell)
	defer cancel()
	if err := server.Shutdown(last); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	return nil
}
