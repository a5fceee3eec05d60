// How a copy comes to be whole, or is none: on a device that has no room, with two windows, and with a server that fails.
import { deepEqual, equal, rejects } from "node:assert/strict";
import { noteAt, noteOf, notes, offlinePage, remove, removeAt } from "../../../main/browser/keep/copies.js";
import { keep, reckon } from "../../../main/browser/keep/keeping.js";
import { Device, LESSON, lessonInOpus, lessonOnServer, sheets, SITE } from "./device.js";

const keepIt = (release) => keep(LESSON, sheets(release), new AbortController().signal, () => {});

async function leftOn(device) {
  return { caches: (await device.caches.keys()).length, worker: device.hasWorker };
}

const NOTHING = { caches: 0, worker: false };

/** An answer that comes when it is let go. */
function held(answer) {
  let letGo = () => {};
  const gate = new Promise((done) => (letGo = done));
  let isAsked = () => {};
  const asked = new Promise((done) => (isAsked = done));
  return { asked, letGo, answer: () => (isAsked(), gate.then(answer)) };
}

Deno.test("a copy is whole once all of it is here, and is served by a worker", async () => {
  const device = new Device(lessonOnServer());
  await device.in(async () => {
    await keepIt();
    const { release, whole, title } = await noteAt(LESSON);
    deepEqual([release, whole, title], ["first", true, "Four Ropes"]);
    equal(device.hasWorker, true);
    const copy = await device.caches.open((await device.caches.keys()).find((name) => name.includes("copy")));
    deepEqual((await copy.keys()).map(({ url }) => url.replace(SITE, "")).sort(), [
      "/assets/play.js?v=1",
      "/assets/sheet.css?v=1",
      "/assets/text.woff2?v=1",
      "/kept/note",
      "/play/first/bass-100.flac",
      "/play/first/click-100.flac",
      "/play/first/line-play.json?kept",
      LESSON,
      "/sheet/first/line/both/36",
      "/sheet/first/line/both/80",
    ]);
  });
});

// what runs these tests has no Web Audio at all
Deno.test("a browser that decodes no Opus keeps the sound without loss", async () => {
  const device = new Device(lessonInOpus());
  await device.in(async () => {
    await keepIt();
    const copy = await device.caches.open((await device.caches.keys()).find((name) => name.includes("copy")));
    const played = (await copy.keys()).map(({ url }) => url.replace(SITE, "")).filter((url) => url.includes("/play/"));
    deepEqual(played.sort(), ["/play/first/click-1.flac", "/play/first/line-play.json?kept"]);
    const { tempos, percents } = await (await copy.match("/play/first/line-play.json?kept")).json();
    deepEqual([percents, tempos], [[100], [{
      percent: 100,
      countIn: { url: "click-1.flac", offset: 0, bytes: 5 },
      files: {},
    }]]);
  });
});

Deno.test("how large a copy becomes is reckoned without having anything made", async () => {
  const device = new Device(lessonInOpus());
  await device.in(async () => {
    const page = /** @type {any} */ (new DOMParser().parseFromString(await (await fetch(LESSON)).text(), "text/html"));
    page.documentElement = { outerHTML: "" };
    const bytes = await reckon(page, []);
    equal(device.asked.includes("/play/first/line-100-exact.json"), false);
    // the table of the rule small-sound: of the FLAC, Opus takes 22 to 31 %
    const sounds = bytes - await reckon(withoutLines(page), []);
    equal(sounds > 1010 / 0.31 && sounds < 1010 / 0.22, true, String(sounds));
  });
});

function withoutLines(page) {
  const all = page.querySelectorAll;
  return { ...page, querySelectorAll: (what) => what === "[data-manifest]" ? [] : all(what) };
}

Deno.test("a server is asked to make one line after the other", async () => {
  const server = lessonInOpus();
  server[LESSON] = twoLines(server[LESSON]);
  server["/play/first/exercise-play.json"] = server["/play/first/line-play.json"];
  const make = server["/play/first/line-100-exact.json"];
  const atOnce = [];
  let making = 0;
  server["/play/first/line-100-exact.json"] = async () => {
    atOnce.push(++making);
    await new Promise((done) => setTimeout(done));
    making--;
    return make();
  };
  await new Device(server).in(async () => {
    await keepIt();
    equal((await noteAt(LESSON)).whole, true);
  });
  deepEqual(atOnce, [1, 1]);
});

/** The page with an exercise beside its line. */
function twoLines(page) {
  return async () => {
    const answer = page();
    const html = (await answer.text()).replace(
      "</html>",
      '<div data-manifest="/play/first/exercise-play.json"></div></html>',
    );
    return new Response(html, { headers: answer.headers });
  };
}

// Storage Standard, section "Usage and quota": a write that does not fit fails with QuotaExceededError
Deno.test("where the room ends in the middle, the copy is not whole, and is gone on with once there is room", async () => {
  const device = new Device(lessonOnServer());
  await device.in(async () => {
    device.room = 1010; // of which page, note and style sheets leave less than the sound takes
    await rejects(keepIt(), { name: "QuotaExceededError" });
    equal((await noteOf("four")).whole, false);
    equal(await noteAt(LESSON), null);
    device.room = Infinity;
    device.asked.length = 0;
    await keepIt();
    equal((await noteAt(LESSON)).whole, true);
    equal(device.asked.includes("/assets/sheet.css?v=1"), false, "what had come is not fetched again");
  });
});

Deno.test("of a lesson that could not be begun nothing stays, and no worker", async () => {
  for (const missing of [LESSON, "/kept", "/assets/kept.js?v=1"]) {
    const device = new Device(lessonOnServer());
    device.server.delete(missing);
    await device.in(async () => {
      await rejects(keepIt(), { message: /^404 / }, missing);
      deepEqual(await leftOn(device), NOTHING, missing);
    });
  }
  const full = new Device(lessonOnServer());
  full.room = 10;
  await full.in(async () => {
    await rejects(keepIt(), { name: "QuotaExceededError" });
    deepEqual(await leftOn(full), NOTHING);
  });
});

Deno.test("a correction that fails leaves the copy that serves", async () => {
  const device = new Device(lessonOnServer());
  await device.in(async () => {
    await keepIt();
    for (const [path, answer] of Object.entries(lessonOnServer("second"))) device.server.set(path, answer);
    device.server.delete("/play/second/bass-100.flac");
    await rejects(keepIt("second"), { message: /^404 / });
    equal((await noteAt(LESSON)).release, "first");
    device.server.set("/play/second/bass-100.flac", () => new Response("better"));
    await keepIt("second");
    deepEqual((await notes()).map(({ release, whole }) => [release, whole]), [["second", true]]);
  });
});

/** One after another, whatever they ask for (W3C Web Locks API, exclusive locks of one name). */
function queue() {
  let last = Promise.resolve();
  return {
    request(_name, _options, work) {
      const done = last.then(work);
      last = done.catch(() => {});
      return done;
    },
  };
}

Deno.test("a second window waits for the first, and fetches nothing again", async () => {
  const device = new Device(lessonOnServer());
  device.locks = queue();
  await device.in(async () => {
    await Promise.all([keepIt(), keepIt()]);
    equal((await noteAt(LESSON)).whole, true);
    equal(device.asked.filter((path) => path.endsWith("/bass-100.flac")).length, 1);
  });
});

Deno.test("a copy that another window has finished stays whole, even where the second one fails", async () => {
  const device = new Device(lessonOnServer());
  await device.in(async () => {
    await keepIt();
    device.server.delete("/sheet/first/line/both/36");
    device.server.set("/play/first/line-play.json", () => Promise.reject(new TypeError("the line is down")));
    await keepIt();
    equal((await noteAt(LESSON))?.whole, true);
  });
});

Deno.test("where another window removes what was the last lesson, the one that comes has its worker and its list", async () => {
  for (const slow of ["/kept", "/assets/kept.js?v=1", "/play/first/bass-100.flac"]) {
    const server = lessonOnServer();
    const device = new Device(server);
    await device.in(async () => {
      const other = { lesson: "other", release: "r" };
      await (await device.caches.open("groundbass.copy.1 other r")).put("/kept/note", Response.json(other));
      device.hasWorker = true;
      const line = held(server[slow]);
      device.server.set(slow, line.answer);
      const coming = keepIt();
      await line.asked;
      await remove("other");
      line.letGo();
      await coming;
      equal((await noteAt(LESSON))?.whole, true, slow);
      equal(device.hasWorker, true, slow);
      equal(await (await offlinePage())?.text().then((list) => list.includes("The list")), true, slow);
    });
  }
});

Deno.test("of a lesson that was taken back all goes that is here, whole or not", async () => {
  for (const missing of ["none", "/play/first/bass-100.flac"]) {
    const device = new Device(lessonOnServer());
    device.server.delete(missing);
    await device.in(async () => {
      await keepIt().catch(() => {});
      equal((await noteOf("four")).whole, missing === "none");
      deepEqual([await removeAt("/series/four-ropes/2"), await removeAt(LESSON)], [false, true]);
      deepEqual(await leftOn(device), NOTHING);
    });
  }
});

Deno.test("a lesson that is removed while it comes leaves nothing", async () => {
  const server = lessonOnServer();
  const device = new Device(server);
  await device.in(async () => {
    const line = held(server["/play/first/bass-100.flac"]);
    device.server.set("/play/first/bass-100.flac", line.answer);
    const coming = keepIt();
    await line.asked;
    await remove("four");
    line.letGo();
    await coming;
    deepEqual(await leftOn(device), NOTHING);
  });
});
