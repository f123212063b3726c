// The worker that hears: the same engine, in a worker of its own, so that an
// edit never waits for sound.
import "./engine-worker.js";
