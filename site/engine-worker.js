// The worker of the engine: loads the module and hands it the bytes of each
// request. What they say is decided in Go on one side and in engine.js on the
// other.
import "./wasm_exec.js";

const fail = (error) => postMessage({ type: "failed", message: String(error?.message ?? error) });

globalThis.blockfieldReady = () => postMessage({ type: "ready" });

// A worker that its browser ends says nothing. So it holds a lock as long as it lives, and
// whoever has started it may wait for that.
const life = `blockfield.worker.${crypto.randomUUID?.() ?? Math.random()}`;
navigator.locks?.request(life, () => {
  postMessage({ type: "life", life });
  return new Promise(() => {});
}).catch(() => {});

addEventListener("message", (event) => {
  try {
    const answer = globalThis.blockfieldHandle(new Uint8Array(event.data.bytes));
    postMessage({ bytes: answer.buffer }, [answer.buffer]);
  } catch (error) {
    fail(error);
  }
});

async function run() {
  const go = new globalThis.Go();
  const answer = await fetch(new URL("engine.wasm", import.meta.url));
  if (!answer.ok) throw new Error(`engine.wasm: ${answer.status}`);
  // A server that does not know the type of a module must not stop us.
  const streams = answer.headers.get("Content-Type") === "application/wasm";
  const { instance } = streams
    ? await WebAssembly.instantiateStreaming(answer, go.importObject)
    : await WebAssembly.instantiate(await answer.arrayBuffer(), go.importObject);
  await go.run(instance);
  throw new Error("engine: the module ended");
}

run().catch(fail);
