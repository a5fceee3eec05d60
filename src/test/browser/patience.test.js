// What neither ends nor fails: a request that a telephone leaves behind when it changes its net, a worker that is gone.
// Timers run out when the test says so.
import { deepEqual, equal, rejects } from "node:assert/strict";
import { decodesOpus } from "../../main/browser/common/opus.js";
import { patiently, received } from "../../main/browser/common/patience.js";
import { Stretcher } from "../../main/browser/common/stretcher.js";
import { having } from "./desk/stand-ins.js";

/** Timers that are let run out by hand. */
class Timers {
  #next = 1;
  /** @type {Map<number, {task: () => void, milliseconds: number}>} */
  set = new Map();

  names = {
    setTimeout: (task, milliseconds) => {
      this.set.set(this.#next, { task, milliseconds });
      return this.#next++;
    },
    clearTimeout: (id) => void this.set.delete(id),
  };

  async runOut() {
    await turns();
    for (const [id, { task }] of [...this.set]) {
      this.set.delete(id);
      task();
    }
    await turns();
  }
}

async function turns() {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve();
}

/** Fetches that answer one after another; without an answer nothing comes until they are broken off (WHATWG Fetch). */
function answering(...answers) {
  const asked = [];
  const fetch = (address, { signal }) => {
    const answer = answers[asked.push(address) - 1];
    if (answer) return Promise.resolve(answer);
    return new Promise((_, fail) => signal.addEventListener("abort", () => fail(signal.reason)));
  };
  return { asked, fetch };
}

const textOf = ({ bytes }) => new TextDecoder().decode(bytes);

Deno.test("a request of which nothing comes is given up, and made again", async () => {
  const timers = new Timers();
  const { asked, fetch } = answering(null, new Response("here"));
  await having({ ...timers.names, fetch }, async () => {
    const coming = patiently(() => received("a"), { again: 1 });
    await timers.runOut();
    equal(asked.length, 1, "after a moment");
    await timers.runOut();
    equal(textOf(await coming), "here");
    deepEqual([asked.length, timers.set.size], [2, 0]);
  });
});

Deno.test("a request that is given up as often as it is tried fails", async () => {
  const timers = new Timers();
  const { fetch } = answering();
  await having({ ...timers.names, fetch }, async () => {
    const coming = rejects(received("a"), { name: "TimeoutError" });
    await timers.runOut();
    await coming;
  });
});

Deno.test("what comes slowly is waited for from each piece on", async () => {
  const timers = new Timers();
  /** @type {ReadableStreamDefaultController | null} */
  let line = null;
  const body = new ReadableStream({ start: (controller) => void (line = controller) });
  const { fetch } = answering(new Response(body));
  await having({ ...timers.names, fetch }, async () => {
    const coming = received("a");
    const seen = new Set();
    for (const piece of ["now ", "and ", "then"]) {
      await turns();
      for (const id of timers.set.keys()) seen.add(id);
      line?.enqueue(new TextEncoder().encode(piece));
    }
    line?.close();
    equal(textOf(await coming), "now and then");
    deepEqual([seen.size, timers.set.size], [3, 0]);
  });
});

Deno.test("a browser that does not answer whether it decodes Opus is asked again the next time", async () => {
  const timers = new Timers();
  let isDeaf = true;
  const samples = new Float32Array(1920);
  samples[1440] = 1;
  const stroke = { sampleRate: 48000, length: 1920, getChannelData: () => samples };
  const decodeAudioData = () => isDeaf ? new Promise(() => {}) : Promise.resolve(stroke);
  class OfflineAudioContext {
    decodeAudioData = decodeAudioData;
  }
  await having({ ...timers.names, OfflineAudioContext }, async () => {
    const first = decodesOpus();
    await timers.runOut();
    equal(await first, false);
    isDeaf = false;
    equal(await decodesOpus(), true);
    isDeaf = true;
    equal(await decodesOpus(), true, "what was found out is remembered");
    equal(timers.set.size, 0);
  });
});

Deno.test("a worker that does not answer is given up, and another one asked", async () => {
  const timers = new Timers();
  const workers = [];
  class Worker extends EventTarget {
    ended = false;
    constructor() {
      super();
      workers.push(this);
    }
    postMessage({ id, channels }) {
      const answer = new MessageEvent("message", { data: { id, channels } });
      if (workers.length > 1) Promise.resolve().then(() => this.dispatchEvent(answer));
    }
    terminate() {
      this.ended = true;
    }
  }
  const buffer = { numberOfChannels: 1, sampleRate: 48000, getChannelData: () => new Float32Array(48000) };
  const made = { copyToChannel() {} };
  const context = { createBuffer: () => made };
  await having({ ...timers.names, Worker }, async () => {
    const stretcher = new Stretcher();
    const stretch = () => stretcher.stretch(context, buffer, 1.2, false);
    const failing = rejects(stretch());
    await timers.runOut();
    await failing;
    equal(workers[0].ended, true);
    equal(await stretch(), made);
    deepEqual([workers.length, timers.set.size], [2, 0]);
  });
});
