// Still pictures, where the browser's graphics do not draw (yet): the engine does,
// in a worker of its own. It draws a small one first, which comes soon, then one as
// large as it is shown, then a smooth one.
import { bytesOf } from "./files.js";
import { makeHelper } from "./helper.js";

const STEPS = [{ part: 4, samples: 1 }, { part: 1, samples: 1 }, { part: 1, samples: 2 }];
const MOST_WIDTH = 800; // pixels
const UNSEEN = { width: 800, height: 600 };
// The slowest honest picture: 800 × 600 smooth pixels take 20 s as a module under Node
// on a busy desk computer; a slow phone is taken to need six times as long (common
// practice, no source).
const STILL_MS = 120_000;
const SHOT_SAMPLES = 2;
const SHOT_MS = 400_000; // for each million pixels of a picture to save

// makeStills returns {want, shoot}. A scene is bytes as text, as the engine sends it.
// drawn(picture, scene) is given the address of each picture of the newest scene, and
// impossible(scene) is told that there is none of it.
export function makeStills({ url, drawn, impossible }) {
  let newest = ""; // scene
  const helper = makeHelper({ url, done, failed: (work) => work.scene === newest && impossible(newest) });

  function draw(scene, box, step) {
    const { part, samples } = STEPS[step];
    const width = Math.round(Math.min(MOST_WIDTH, box.width) / part);
    const height = Math.round((width * box.height) / box.width);
    const request = { op: "picture", scene, width, height, samples };
    helper.want({ key: `${step} ${width} ${height} ${scene}`, request, limitMs: STILL_MS, scene, box, step });
  }

  function done(answer, { scene, box, step }) {
    if (scene !== newest) return;
    if (!answer.picture) {
      impossible(scene);
      return;
    }
    drawn(`data:image/jpeg;base64,${answer.picture}`, scene);
    if (step + 1 < STEPS.length) draw(scene, box, step + 1);
  }

  return {
    // want draws a scene as large as a box; one that cannot be seen has no size yet.
    want(scene, { width, height }) {
      newest = scene;
      draw(scene, width * height > 0 ? { width, height } : UNSEEN, 0);
    },
    // rest leaves what is being drawn unfinished.
    rest() {
      newest = "";
      helper.stop();
    },
    // shoot promises a picture of a scene to save, by a worker for it alone.
    shoot(scene, { width, height }) {
      return new Promise((resolve, reject) => {
        const own = makeHelper({
          url,
          done(answer) {
            own.stop();
            if (answer.picture) resolve(new Blob([bytesOf(answer.picture)], { type: "image/png" }));
            else reject(new Error("the scene was refused"));
          },
          failed() {
            own.stop();
            reject(new Error("the worker died"));
          },
        });
        const request = { op: "picture", kind: "png", scene, width, height, samples: SHOT_SAMPLES };
        own.want({ key: "shot", request, limitMs: SHOT_MS * Math.max(1, (width * height) / 1e6) });
      });
    },
  };
}
