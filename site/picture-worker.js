// The worker that draws still pictures: the same engine, in a worker of its own, so
// that an edit never waits for them.
import "./engine-worker.js";
