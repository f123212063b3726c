package cli

import (
	"context"
	"io"
	"net"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// At the end an answer that is under way is still given whole, and nobody new
// is let in.
func TestServeUntilFinishesAnswers(t *testing.T) {
	t.Parallel()
	listener, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	asked, finish := make(chan bool), make(chan bool)
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		asked <- true
		<-finish
		io.WriteString(w, "whole")
	})}
	ctx, end := context.WithCancel(t.Context())
	ended := make(chan error)
	go func() { ended <- serveUntil(ctx, server, listener) }()

	answer := make(chan string)
	go func() {
		res, err := http.Get("http://" + listener.Addr().String())
		if err != nil {
			answer <- err.Error()
			return
		}
		defer res.Body.Close()
		body, _ := io.ReadAll(res.Body)
		answer <- string(body)
	}()
	<-asked
	end()
	for { // the door is shut before the last answer is given
		c, err := net.Dial("tcp", listener.Addr().String())
		if err != nil {
			break
		}
		c.Close()
	}
	finish <- true
	assert.Equal(t, "whole", <-answer)
	assert.NoError(t, <-ended)
}
