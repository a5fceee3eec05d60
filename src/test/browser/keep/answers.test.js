// What the worker answers, and what it leaves to the browser.
import { deepEqual, equal } from "node:assert/strict";
import { answerTo } from "../../../main/browser/keep/answers.js";
import { keep } from "../../../main/browser/keep/keeping.js";
import { Device, LESSON, lessonOnServer, sheets, SITE } from "./device.js";

/** A device that keeps the lesson, with what the server has now in the place of what it had then. */
async function keeping(work, more) {
  const device = new Device(lessonOnServer());
  await device.in(async () => {
    await keep(LESSON, sheets(), new AbortController().signal, () => {});
    device.server.clear();
    device.asked.length = 0;
    await work(device);
  }, more);
}

const isCopy = async (answer) => (await answer.text()).includes("data-kept=");

Deno.test("what changes something, another site's, the desk's and files to take home are left to the browser", () =>
  keeping(async (device) => {
    device.hasNet = false;
    const left = [
      Device.goesTo(LESSON, { method: "POST" }),
      Device.asks("/assets/play.js?v=1", { method: "HEAD" }),
      Device.goesTo("/desk"),
      Device.goesTo("/desk/lessons"),
      Device.asks("/desk/anything"),
      Device.goesTo("/files/first/sheet.pdf"),
      Device.asks("/play/first/bass-100.flac", { destination: "audio" }),
      Device.asks("/me/practised"),
      { ...Device.goesTo(LESSON), url: "https://other.example" + LESSON },
      { ...Device.asks("/assets/play.js"), url: "https://other.example/assets/play.js?v=1" },
    ];
    for (const request of left) equal(answerTo(request), null, `${request.method} ${request.url}`);
    deepEqual(device.asked, []);
    equal(await isCopy(await answerTo({ ...left[0], method: "GET" })), true);
  }));

// 302, 404, 410 and 503: RFC 9110 section 15
Deno.test("with a net a page is the server's, whatever it says, though it is kept", () =>
  keeping(async (device) => {
    for (const status of [200, 302, 404, 410, 503]) {
      device.server.set(LESSON, () => new Response("of the server", { status }));
      const answer = await answerTo(Device.goesTo(LESSON));
      deepEqual([answer.status, await answer.text()], [status, "of the server"]);
    }
  }));

Deno.test("without a net a page is the copy's, by either address, whatever its query", () =>
  keeping(async (device) => {
    device.hasNet = false;
    equal(await isCopy(await answerTo(Device.goesTo(LESSON))), true);
    equal(await isCopy(await answerTo(Device.goesTo(LESSON + "?tempo=80"))), true);
    const permanent = await answerTo(Device.goesTo("/e/four?tempo=80"));
    deepEqual([permanent.status, permanent.headers.get("Location")], [302, `${SITE}${LESSON}?tempo=80`]);
  }));

Deno.test("without a net the list stands in the place of a page that is not kept, and says that it is not that", () =>
  keeping(async (device) => {
    device.hasNet = false;
    for (
      const [path, status] of [["/", 503], ["/me", 503], ["/series/four-ropes/2", 503], ["/e/five", 503], [
        "/kept",
        200,
      ]]
    ) {
      const answer = await answerTo(Device.goesTo(path));
      deepEqual([answer.status, (await answer.text()).includes("The list")], [status, true], path);
    }
  }));

Deno.test("a copy that is not whole is not shown", async () => {
  const device = new Device(lessonOnServer());
  device.server.delete("/play/first/bass-100.flac");
  await device.in(async () => {
    await keep(LESSON, sheets(), new AbortController().signal, () => {}).catch(() => {});
    device.hasNet = false;
    for (const path of [LESSON, "/e/four"]) {
      const answer = await answerTo(Device.goesTo(path));
      deepEqual([answer.status, await isCopy(answer)], [503, false], path);
    }
  });
});

/** Timers that go off when they are told to. */
function timers() {
  const set = [];
  return { set, setTimeout: (task, milliseconds) => set.push({ task, milliseconds }), clearTimeout: () => {} };
}

const soon = setTimeout;

/** Awaits what comes within a few turns. */
async function until(isThere) {
  for (let turn = 0; !isThere() && turn < 1000; turn++) await new Promise((done) => soon(done));
  equal(isThere(), true);
}

// common practice, no source: how long a reader waits before they give a page up
Deno.test("on a line that carries nothing a page that is kept is shown after eight seconds", async () => {
  const { set, ...clock } = timers();
  await keeping(async (device) => {
    device.server.set(LESSON, () => new Promise(() => {}));
    let shown = null;
    const answer = answerTo(Device.goesTo(LESSON)).then((given) => (shown = given));
    await until(() => set.length === 1);
    deepEqual([set[0].milliseconds, shown], [8000, null]);
    set[0].task();
    await answer;
    equal(await isCopy(shown), true);
  }, clock);
});

Deno.test("what comes before that is the server's, and a page that is not kept is waited for", async () => {
  const { set, ...clock } = timers();
  await keeping(async (device) => {
    let come = (_answer) => {};
    device.server.set(LESSON, () => new Promise((done) => (come = done)));
    const answer = answerTo(Device.goesTo(LESSON));
    await until(() => set.length === 1);
    come(new Response("late, but here"));
    equal(await (await answer).text(), "late, but here");
    set[0].task();
    device.server.set("/", () => new Response("home"));
    equal(await (await answerTo(Device.goesTo("/"))).text(), "home");
    equal(set.length, 1);
  }, clock);
});

// RFC 9110 sections 14 and 15.3.7
Deno.test("sound that is kept comes from the copy, with and without a net, and in the parts that are asked for", () =>
  keeping(async (device) => {
    for (const hasNet of [true, false]) {
      device.hasNet = hasNet;
      const request = Device.asks("/play/first/bass-100.flac", { headers: new Headers({ Range: "bytes=10-19" }) });
      const answer = await answerTo(request);
      deepEqual([answer.status, answer.headers.get("Content-Range")], [206, "bytes 10-19/1000"]);
      equal(await answer.text(), "b".repeat(10));
    }
    deepEqual(device.asked, []);
  }));

Deno.test("what is not kept comes from the server, and so does what is kept under another query", () =>
  keeping(async (device) => {
    for (
      const path of ["/assets/play.js?v=2", "/assets/play.js", "/play/first/bass-60.flac", "/play/first/line-play.json"]
    ) {
      device.server.set(path, () => new Response("of the server"));
      equal(await (await answerTo(Device.asks(path))).text(), "of the server", path);
    }
  }));

Deno.test("where a sheet was not kept for a width, that of the nearest serves", () =>
  keeping(async (device) => {
    device.hasNet = false;
    const at = async (width) => await (await answerTo(Device.asks(`/sheet/first/line/both/${width}`))).text();
    deepEqual(
      [await at(20), await at(36), await at(60), await at(120)],
      [36, 36, 80, 80].map((n) => `<svg>${n}</svg>`),
    );
    equal((await answerTo(Device.asks("/sheet/first/line/tab/36"))).type, "error");
  }));

Deno.test("a storage that fails takes nothing away that the net has", () =>
  keeping(async (device) => {
    const refuse = () => Promise.reject(new DOMException("", "UnknownError"));
    Object.assign(device.caches, { keys: refuse, match: refuse, open: refuse });
    for (
      const [path, request] of [[LESSON, Device.goesTo], ["/", Device.goesTo], ["/assets/play.js?v=1", Device.asks]]
    ) {
      device.server.set(path, () => new Response("of the server"));
      equal(await (await answerTo(request(path))).text(), "of the server", path);
    }
  }));
