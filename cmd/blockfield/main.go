// Command blockfield designs, counts and draws wooden block sound diffusers,
// and builds and serves the page that does the same in a browser.
//
// Run it without arguments for its usage.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"blockfield/cmd/blockfield/cli"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := cli.Run(ctx, os.Args[1:], cli.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr})
	stop()
	os.Exit(code)
}
