// What becomes of the page of a lesson whose sound is still being made. Its timers run out when the test says so.
import { deepEqual, equal, ok } from "node:assert/strict";
import { having } from "./desk/stand-ins.js";

class Element {
  constructor(own = {}) {
    Object.assign(this, own);
  }
}

/** The page, opened so long ago; `more` says that the server has more to hear by now. */
async function opened({ now = 5000, scrollY = 0, active = false }, work) {
  const parts = { coming: { hidden: false }, there: { hidden: true } };
  const note = new Element({
    id: "sound-follows",
    dataset: { played: "no" },
    querySelector: (selector) => parts[selector.match(/"(.+)"/)[1]],
  });
  const document = Object.assign(new EventTarget(), { visibilityState: "visible", getElementById: () => note });
  const site = { more: false, asked: 0, reloaded: 0, parts, document };
  let timer = { task: () => {}, milliseconds: 0 };
  const names = {
    document,
    HTMLElement: Element,
    scrollY,
    performance: { now: () => now },
    navigator: { userActivation: { hasBeenActive: active } },
    location: { href: "https://site.example/a", reload: () => site.reloaded++ },
    DOMParser: class {
      parseFromString(played) {
        return { getElementById: () => ({ dataset: { played } }) };
      }
    },
    fetch: () => Promise.resolve({ ok: true, text: () => Promise.resolve((site.asked++, site.more ? "yes" : "no")) }),
    setTimeout: (task, milliseconds) => (timer = { task, milliseconds }),
  };
  const look = async () => {
    const { milliseconds, task } = timer;
    timer = { task: () => {}, milliseconds: 0 };
    await task();
    return milliseconds;
  };
  await having(names, async () => {
    await import(`../../main/browser/sound-follows.js?${crypto.randomUUID()}`);
    await work(site, look);
  });
}

Deno.test("who has just come gets the page anew, and who reads or does something is told", async () => {
  const came = async (how) => {
    let told = "";
    await opened(how, async (site, look) => {
      site.more = true;
      await look();
      told = `${site.reloaded} ${site.parts.coming.hidden} ${site.parts.there.hidden}`;
    });
    return told;
  };
  const [anew, link] = ["1 false true", "0 true false"];
  deepEqual(await came({}), anew);
  deepEqual(await came({ now: 60_000 }), link, "read out without a touch");
  deepEqual(await came({ scrollY: 300 }), link);
  deepEqual(await came({ active: true }), link);
});

Deno.test("it asks more and more seldom, and not while nobody sees the page", () =>
  opened({}, async (site, look) => {
    const waited = [];
    for (let time = 0; time < 20; time++) waited.push(await look());
    deepEqual(waited.toSorted((one, other) => one - other), waited);
    ok(waited[0] <= 5000 && waited[19] > 20_000 && waited[19] <= 60_000);
    const { asked } = site;
    Object.assign(site.document, { visibilityState: "hidden" });
    await look();
    equal(await look(), 0);
    equal(site.asked, asked);
    Object.assign(site.document, { visibilityState: "visible" });
    site.document.dispatchEvent(new Event("visibilitychange"));
    for (let turn = 0; turn < 20; turn++) await Promise.resolve();
    equal(site.asked, asked + 1);
  }));
