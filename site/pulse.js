// Watches over the preview's frame, since a process that was killed says
// nothing. Time counts only while the picture can be seen: browsers neither draw
// what is out of sight nor keep its timers.

const READY_MS = 45_000; // longest wait for a first picture: the module is large
const PICTURE_MS = 20_000; // and for a later one: software graphics under load needs a few seconds
const BEAT_MS = 5_000; // how often a frame at rest is asked whether it lives
const PULSE_MS = 8_000; // longest silence after it: a pass of software graphics takes one or two seconds
const FRESH_MS = 1_000; // a frame that spoke so lately need not be asked

// watchPulse calls ask() now and then, which must bring some message, and
// dead() once when none comes or when there is no picture of what was sent. The
// element is where the picture is seen.
export function watchPulse({ element, ask, dead }) {
  let inView = true;
  let begun = false; // the frame has drawn before
  let awaited = false; // a picture is
  let asked = false; // and not answered yet
  let heardAt = 0;
  let beat = 0;
  let silence = 0;
  let picture = 0;

  const seen = () => inView && document.visibilityState === "visible";

  function rest() {
    clearTimeout(beat);
    clearTimeout(silence);
    clearTimeout(picture);
    asked = false;
  }

  function die() {
    stop();
    dead();
  }

  function wait() {
    clearTimeout(picture);
    if (awaited && seen()) picture = setTimeout(die, begun ? PICTURE_MS : READY_MS);
  }

  function listen() {
    clearTimeout(beat);
    clearTimeout(silence);
    asked = false;
    if (begun && seen()) beat = setTimeout(question, BEAT_MS);
  }

  function question() {
    if (asked) return;
    asked = true;
    silence = setTimeout(die, PULSE_MS);
    ask();
  }

  function look() {
    rest();
    listen();
    wait();
  }

  const observer = new IntersectionObserver((entries) => {
    const now = entries.at(-1).isIntersecting;
    if (now === inView) return;
    inView = now;
    look();
  });
  observer.observe(element);
  document.addEventListener("visibilitychange", look);

  function stop() {
    rest();
    observer.disconnect();
    document.removeEventListener("visibilitychange", look);
  }

  return {
    // sent says that something to draw has gone to the frame.
    sent() {
      awaited = true;
      wait();
      if (begun && seen() && performance.now() - heardAt > FRESH_MS) question();
    },
    // heard says that the frame spoke; answered, that it showed a picture of
    // what was sent, or refused to.
    heard(answered) {
      heardAt = performance.now();
      if (answered) {
        begun = true;
        awaited = false;
        clearTimeout(picture);
      }
      listen();
    },
    stop,
  };
}
