// The desk around the text of one line: the sheet to work on, the strip of the bar in hand, fretboard, sound and the text
// itself. The text in the editor component is the one truth here; all else shows it or changes it.
import { byId, element, isCommand, isTyping, partsOf, wordsOf } from "../../common/page.js";
import { post, postForJson } from "./asking.js";
import { LineText } from "./text.js";
import { MidiKeys } from "./midi.js";
import { Neck } from "./neck.js";
import { Player } from "./sound.js";
import { Strip } from "./strip.js";
import { completeValue, countAt, quarters } from "./words.js";
import { Choices } from "./choices.js";

const STILL = 120; // milliseconds after which a window that was made wider or narrower stays as it is
const PIXELS = 10.5; // for a staff space, where there is room
const NARROW = 44; // staff spaces
const ROOMY = "(min-width: 40rem)"; // on a phone the sheet and the strip come first
const MARGIN = 12; // pixels around the bar in hand
const PATIENCE = 8; // how often something is asked again before it is given up
const BREATH = 5000; // milliseconds until a server is asked again that broke off in its answer
const SETTINGS = ["title", "key", "meter", "tempo", "feel", "strings", "frets", "style", "composer", "rights"];

/** What an answer says line by line, each as soon as it is there. @param {Response} answer */
async function* piecesOf(answer) {
  const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
  let begun = "";
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    const lines = (begun + read.value).split("\n");
    begun = lines.pop() ?? "";
    for (const line of lines) yield JSON.parse(line);
  }
}

export class LineDesk {
  /**
   * @param root the element around the text area of a line
   * @param parts what to put around it
   * @param words the words of line text
   */
  constructor(root, parts, words, form) {
    this.root = root;
    this.words = words;
    this.form = form;
    this.path = form.dataset.path;
    this.prefix = root.dataset.prefix;
    this.area = byId(root.dataset.field, HTMLTextAreaElement);
    this.say = wordsOf(parts);
    this.ids = 0;
    this.asked = 0;
    this.live = null;
    this.liveText = null;
    /** @type {Set<Promise<unknown>>} */
    this.awaiting = new Set();
    this.drawings = new Map(); // of the systems shown, by their keys
    this.paused = false; // the server has said when it may be asked again
    this.here = { bar: null, at: 0 };
    this.last = "strip";
    this.listeners = [];
    this.midiWord = null; // what its button says while no keyboard is listened to
    this.stand = parts.querySelector(".stand").cloneNode(true);
    this.part = partsOf(this.stand);
    this.enclose(document.activeElement === this.area);
    this.text = new LineText(this.area, {
      memory: `groundbass-history:${this.path}:${this.area.id}`,
      editor: this.stand.dataset.editor,
      words: this.words,
      strings: () => this.strings(),
      changed: () => this.changed(),
      entered: () => {
        this.last = "text";
        this.where();
      },
      fix: (index) => this.fixAt(index),
    });
    // the editor component weighs as much as all else on the page: it comes when somebody comes to the text
    for (const coming of ["pointerenter", "focusin"]) {
      this.part("text-box").addEventListener(coming, () => this.text.open(), { once: true });
    }
    for (const moved of ["keyup", "pointerup"]) this.part("text").addEventListener(moved, () => this.follow());
    this.strip = new Strip(this.part("strip"), this);
    this.neck = new Neck(this.part("neck"), this.say, (place) => this.writePlace(place));
    this.player = new Player(this.path, (bar) => this.light(bar), (word) => this.tell(word ? this.say(word) : ""));
    this.midi = new MidiKeys((pitches) => this.pitches(pitches), (word, value) => this.midiTold(word, value));
    this.settings = new Map();
    this.buildTools();
    this.buildSettings();
    this.buildKeys();
    this.part("walk").addEventListener("toggle", () => this.part("walk").open && this.refresh());
    new ResizeObserver(() => this.resized()).observe(this.part("sheet"));
    this.refresh();
  }

  /**
   * Puts the desk around the field of the text.
   * @param {boolean} begun whether somebody is typing in it
   */
  enclose(begun) {
    const field = this.root.querySelector(".field");
    const drawn = this.root.querySelector(".live svg");
    if (drawn) this.part("before").append(element("div", { class: "system" }, drawn)); // until the first answer
    this.root.classList.remove("pair");
    this.root.replaceChildren(this.stand);
    this.part("text").append(field);
    this.part("text-box").open = begun || matchMedia(ROOMY).matches;
    if (begun) this.area.focus(); // which its new place took away
  }

  buildTools() {
    for (const technique of this.words.techniques) {
      this.part("technique").append(element("option", { value: technique, text: technique }));
    }
    const does = {
      settings: () => this.toggleSettings(),
      "add-bar": () => this.addBar(),
      undo: () => this.history(true),
      redo: () => this.history(false),
      listen: () => this.listen(),
      rest: () => this.writePlace("rest"),
      hold: () => this.writePlace("hold"),
      midi: () => this.toggleMidi(),
    };
    for (const [name, action] of Object.entries(does)) this.button(name).addEventListener("click", action);
    this.button("midi").hidden = !MidiKeys.offered;
  }

  button(name) {
    return this.stand.querySelector(`[data-do="${name}"]`);
  }

  buildSettings() {
    for (const name of SETTINGS) {
      const input = element("input", {
        type: "text",
        id: `${this.prefix}-setting-${name}`,
        autocomplete: "off",
        spellcheck: "false",
      });
      const label = element("label", { for: input.id, text: this.say(`setting-${name}`) });
      this.part("settings").append(element("div", { class: "stand-setting" }, label, input));
      const choices = new Choices(
        input,
        this.say("completions"),
        (typed) => completeValue(name, typed, typed.length, this.words),
      );
      input.addEventListener("input", () => choices.offer(1));
      input.addEventListener("change", () => this.set(name, input.value));
      input.addEventListener("keydown", (event) => {
        if (choices.key(event)) event.preventDefault();
        else if (event.key === "Enter") {
          event.preventDefault();
          this.set(name, input.value);
        } else if (event.key === "Escape") this.toggleSettings();
      });
      this.settings.set(name, input);
    }
    this.part("settings").setAttribute("role", "group");
    this.part("settings").setAttribute("aria-label", this.say("settings"));
  }

  set(name, value) {
    const now = this.live?.settings.find((setting) => setting.name === name)?.value ?? "";
    if (now !== value.trim()) this.edit({ edit: "setting", name, value });
  }

  toggleSettings() {
    const box = this.part("settings");
    box.hidden = !box.hidden;
    this.button("settings").setAttribute("aria-expanded", String(!box.hidden));
    if (box.hidden) this.button("settings").focus();
    else box.querySelector("input").focus();
  }

  buildKeys() {
    document.addEventListener("keydown", (event) => {
      this.undoKey(event);
      this.barKey(event);
    });
    this.stand.addEventListener("keydown", (event) => {
      if (event.altKey && event.key.toLowerCase() === "p") {
        event.preventDefault();
        this.listen();
      }
    });
    this.part("sheet").addEventListener("keydown", (event) => this.walk(event));
    this.part("sheet").addEventListener("click", (event) => {
      const spot = event.target.closest("[data-bar-spot]");
      if (spot) this.openBar(Number(spot.dataset.barSpot), "first");
    });
  }

  /**
   * Undoes and does again wherever the focus is; a field in which something else is typed undoes that itself. The plain
   * field of the text forgets what was typed once the strip or a button has changed it: its history is ours as well.
   */
  undoKey(event) {
    const undo = isCommand(event, "z") && !event.shiftKey;
    const redo = isCommand(event, "y") || (isCommand(event, "z") && event.shiftKey);
    const ours = event.target === this.area || this.part("strip").contains(event.target);
    const own = isTyping(event) && !ours;
    if (event.defaultPrevented || own || (!undo && !redo)) return;
    event.preventDefault();
    this.history(undo);
  }

  /** Adds a bar wherever nothing is typed; a link is opened by these keys in a window of its own. */
  barKey(event) {
    if (event.defaultPrevented || !isCommand(event, "enter") || event.shiftKey) return;
    if (isTyping(event) || event.target.closest("a[href]")) return;
    event.preventDefault();
    this.addBar();
  }

  /** From bar to bar over the sheet. */
  walk(event) {
    const spot = event.target.closest("[data-bar-spot]");
    if (spot && (event.defaultPrevented || this.strip.passage.key(event, Number(spot.dataset.barSpot)))) return;
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!spot || !by) return;
    event.preventDefault();
    this.spot(Number(spot.dataset.barSpot) + by)?.focus();
  }

  /** The bar that a key speaks of; a strip that is open goes there, so that one sees which is meant. */
  takeInHand(number) {
    if (this.strip.bar === null) return this.strip.passage.begin(number);
    if (this.strip.bar === number) return;
    this.strip.open(number);
    this.show();
  }

  /** Shows which bars are one passage. */
  markPassage() {
    for (const spot of this.part("sheet").querySelectorAll("[data-bar-spot]")) {
      spot.classList.toggle("spot-chosen", this.strip.passage.has(Number(spot.dataset.barSpot)));
    }
  }

  spot(number) {
    return this.part("sheet").querySelector(`[data-bar-spot="${number}"]`);
  }

  // --- the text and what it comes to

  /** Asks at once; what is typed while an answer is on its way is asked together, once that is there. */
  changed() {
    if (!this.paused) this.refresh();
  }

  width() {
    return Math.round(Math.max(NARROW, Math.min(110, this.part("sheet").clientWidth / PIXELS)));
  }

  resized() {
    const width = this.width();
    if (this.drawnFor && Math.abs(width - this.drawnFor) > 3 && !this.paused) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.refresh(), STILL);
    }
    this.strip.spread();
  }

  /**
   * Asks what the text comes to, once the question before is answered: a server draws on for a browser that no longer
   * waits. An answer is dropped where it speaks of another text than the one that stands now.
   */
  refresh() {
    clearTimeout(this.timer);
    this.paused = false;
    this.askedText = this.text.value();
    const [number, text, before] = [++this.asked, this.askedText, this.flight];
    this.flight = Promise.resolve(before).then(() => number === this.asked ? this.ask(number, text) : undefined);
    return this.flight;
  }

  async ask(number, text) {
    const width = this.width();
    const language = this.form.dataset.language;
    const has = [...this.drawings.keys()].join(" ");
    const body = { text, width: String(width), prefix: this.prefix, language, has, apart: "yes" };
    if (this.part("walk").open) body.walk = "yes";
    try {
      const { answer, word, wait } = await post(`${this.path}/live`, body);
      if (word === "expired") return this.tell(this.say(word));
      if (word === "busy") return this.later(number, wait);
      if (!answer) return this.away(number);
      const pieces = piecesOf(answer);
      const drawn = (await pieces.next()).value;
      const stands = () => number === this.asked && text === this.text.value();
      if (stands()) this.drawAhead(drawn, width);
      const said = (await pieces.next()).value;
      if (!stands()) return; // typed on: places in it are elsewhere now
      if (!said) return this.later(number, BREATH);
      this.liveText = text;
      this.live = { ...drawn, remarks: said.remarks };
      if (this.offline) this.tell("");
      this.offline = false;
      this.show();
    } catch {
      this.away(number);
    } finally {
      if (number === this.asked) this.askedText = null;
    }
  }

  away(number) {
    if (number !== this.asked) return;
    this.offline = true;
    this.tell(this.say("offline"));
  }

  /** Systems that are drawn as before come without their drawing. */
  drawAhead(live, width) {
    this.drawnFor = width;
    this.drawings = new Map(live.systems.map(({ key, svg }) => [key, svg || this.drawings.get(key)]));
    this.live = { ...live, remarks: this.live?.remarks ?? [] }; // what else is shown meanwhile has these drawings, too
    this.drawSheet(this.live, this.live.remarks);
  }

  /** The server has too much to do; it says after how many milliseconds to ask again. */
  later(number, wait) {
    if (number !== this.asked) return;
    this.tell(this.say("busy"));
    this.offline = true;
    clearTimeout(this.timer);
    this.paused = true;
    this.timer = setTimeout(() => this.refresh(), wait);
  }

  /** Waits until what is shown is what the text says. Whether it came to that. */
  async settled() {
    for (let tries = 0; tries < PATIENCE && this.liveText !== this.text.value(); tries++) {
      if (this.askedText !== this.text.value()) this.refresh();
      await this.flight;
      if (this.offline) return false;
    }
    return this.liveText === this.text.value();
  }

  /** Counts work among what is still to change the text, until it has. @template T @param {Promise<T>} work */
  awaited(work) {
    this.awaiting.add(work);
    const done = () => this.awaiting.delete(work);
    work.then(done, done);
    return work;
  }

  /** What is still to change the text: places that were pressed, changes that the server is asked for. Null for nothing. */
  coming() {
    return this.awaiting.size ? Promise.allSettled(this.awaiting) : null;
  }

  /**
   * Has the server change the text, one change after the other. Whether it could.
   * @param {Record<string, unknown>} change
   * @param {string} cannot what is said where it could not
   */
  edit(change, cannot = "cannot") {
    const done = this.awaited((this.editing ?? Promise.resolve()).then(() => this.editNow(change, cannot, PATIENCE)));
    this.editing = done.catch(() => false);
    return done;
  }

  async editNow(change, cannot, patience) {
    const said = await this.ofText("edit", change);
    if (!said) return false;
    if (said.text !== this.text.value()) {
      return patience > 0 && this.editNow(change, cannot, patience - 1); // typed on meanwhile
    }
    if (!said.splices.length) {
      this.tell(this.say(cannot));
      return false;
    }
    this.text.apply(said.splices);
    this.tell("");
    return await this.settled();
  }

  /**
   * Asks something of the text as it stands, again where the server is busy. The answer, with the text that it is of;
   * null where there is none, which is told.
   */
  async ofText(question, fields, patience = PATIENCE) {
    const text = this.text.value();
    const { value, word, wait } = await postForJson(`${this.path}/${question}`, { ...fields, text });
    if (word) this.tell(this.say(word));
    if (word !== "busy" || patience === 0) return value && { ...value, text };
    await new Promise((resolve) => setTimeout(resolve, wait));
    return this.ofText(question, fields, patience - 1);
  }

  take(fix) {
    if (this.liveText !== this.text.value()) return;
    this.text.apply(fix.splices);
    this.strip.reread();
  }

  /** Also where the answer to the last key is still on its way. */
  async fixAt(index) {
    if (!(await this.settled())) return;
    const fixable = this.live.remarks.filter((remark) => remark.fixes.length);
    const line = this.text.lineAt(index);
    const remark = fixable.find((one) => one.from <= index && index <= one.to) ??
      fixable.find((one) => one.line === line);
    if (remark) this.take(remark.fixes[0]);
  }

  async history(back) {
    await (back ? this.text.undo() : this.text.redo());
    this.strip.reread();
  }

  tell(text) {
    this.part("word").textContent = text;
  }

  strings() {
    return this.live?.neck.strings.map((string) => string.name.replace(/f$/, "")) ?? [];
  }

  onShow(listener) {
    this.listeners.push(listener);
  }

  /** Once, when the line is shown first. */
  once(listener) {
    if (this.live) return listener();
    this.onShow(() => {
      if (!listener) return;
      const first = listener;
      listener = null;
      first();
    });
  }

  mistakes() {
    return this.live?.remarks.filter((remark) => remark.weight === "error").length ?? 0;
  }

  looks() {
    return (this.live?.remarks.length ?? 0) - this.mistakes();
  }

  // --- showing

  show() {
    const live = this.live;
    const open = this.strip.bar;
    this.drawSheet(live, live.remarks);
    this.part("empty").hidden = live.systems.length > 0 || live.undrawn;
    this.button("add-bar").classList.toggle("button-quiet", live.bars.length > 0);
    this.part("undrawn").hidden = !live.undrawn;
    this.part("undrawn").textContent = live.undrawn;
    if (open !== null) {
      if (live.bars.some((bar) => bar.number === open)) this.strip.update();
      else this.loseBar();
    }
    this.neck.show(live.neck);
    this.text.show(live.remarks);
    this.showRemarks();
    this.showSettings();
    this.showWalk();
    this.where();
    this.listeners.forEach((listener) => listener());
  }

  /** The sheet alone, which is there before anything is said of it. */
  drawSheet(live, remarks) {
    const focused = /** @type {HTMLElement | null} */ (document.activeElement)?.dataset.barSpot;
    const open = this.strip.bar;
    const split = open === null
      ? live.systems.length
      : (live.bars.find((bar) => bar.number === open)?.system ?? -1) + 1;
    this.draw(this.part("before"), live, remarks, 0, split);
    this.draw(this.part("after"), live, remarks, split, live.systems.length);
    this.tabStop();
    this.markPassage();
    if (focused) this.spot(focused)?.focus();
    if (this.last === "text") this.follow(live);
  }

  draw(host, live, remarks, first, end) {
    const systems = live.systems.slice(first, end);
    systems.forEach((system, place) => {
      const index = first + place;
      const bars = live.bars.filter((bar) => bar.system === index);
      let box = host.children[place];
      if (!box) {
        box = element("div", { class: "system" });
        host.append(box);
      }
      if (box.drawing !== system.key) {
        box.drawing = system.key;
        box.innerHTML = this.drawings.get(system.key); // drawn by the server, words in it escaped
        box.spots = null;
      }
      this.putSpots(box, bars, remarks);
    });
    while (host.children.length > systems.length) host.lastElementChild.remove();
  }

  /** Over a system in which nothing changed they stay as they are. */
  putSpots(box, bars, all) {
    const numbers = new Set(bars.map((bar) => bar.number));
    const remarks = all.filter((remark) => numbers.has(remark.bar));
    const said = JSON.stringify([
      this.strip.bar,
      bars.map(({ number, left, right }) => [number, left, right]),
      remarks.map(({ bar, weight, x }) => [bar, weight, x]),
    ]);
    if (box.spots === said) {
      box.querySelectorAll("[data-bar-spot]").forEach((spot) => spot.setAttribute("tabindex", "-1"));
      return;
    }
    box.spots = said;
    box.querySelectorAll("[data-bar-spot], .spot-mark").forEach((old) => old.remove());
    bars.forEach((bar) => box.append(...this.spots(bar, remarks)));
  }

  /** What one clicks on to open a bar, and the marks of what is wrong in it. */
  spots(bar, remarks) {
    const here = remarks.filter((remark) => remark.bar === bar.number);
    const name = here.length ? this.say("barRemarks", bar.number, here.length) : this.say("bar", bar.number);
    const open = this.strip.bar === bar.number;
    const spot = element("button", {
      type: "button",
      class: open ? "spot spot-open" : "spot",
      "data-bar-spot": bar.number,
      "aria-label": name,
      "aria-expanded": String(open),
      tabindex: "-1",
    });
    spot.style.left = `${100 * bar.left}%`;
    spot.style.width = `${100 * (bar.right - bar.left)}%`;
    const marks = here.map((remark) => {
      const mark = element("span", { class: `spot-mark spot-${remark.weight}`, "aria-hidden": "true" });
      mark.style.left = `${100 * (remark.x < 0 ? bar.left + 0.01 : remark.x)}%`;
      return mark;
    });
    return [spot, ...marks];
  }

  /** One bar can be reached with Tab: the open one, else the first. */
  tabStop() {
    (this.spot(this.strip.bar ?? this.here.bar) ?? this.part("sheet").querySelector("[data-bar-spot]"))?.setAttribute(
      "tabindex",
      "0",
    );
  }

  /** Beside the text, the sheet shows the bar that is written there. */
  follow(live = this.live) {
    const line = this.text.lineHere();
    const bar = live?.bars.filter((one) => one.line <= line).at(-1);
    this.stand.querySelectorAll(".spot-here").forEach((spot) => spot.classList.remove("spot-here"));
    const spot = bar && this.spot(bar.number);
    if (!spot) return;
    spot.classList.add("spot-here");
    const sheet = this.part("sheet");
    const [all, own] = [sheet.getBoundingClientRect(), spot.getBoundingClientRect()];
    if (own.top < all.top) sheet.scrollTop -= all.top - own.top + MARGIN;
    else if (own.bottom > all.bottom) sheet.scrollTop += own.bottom - all.bottom + MARGIN;
  }

  light(bar) {
    this.stand.querySelectorAll(".spot-sounding").forEach((spot) => spot.classList.remove("spot-sounding"));
    if (bar !== null) this.spot(bar)?.classList.add("spot-sounding");
    this.button("listen").textContent = this.say(bar === null && !this.player.playing ? "listen" : "stop");
  }

  remarkItem(remark) {
    const sentence = element("span", { lang: remark.language, text: remark.sentence });
    const item = element(
      "li",
      { class: `remark-line remark-line-${remark.weight}` },
      element("strong", { text: `${remark.name}: ` }),
      sentence,
    );
    for (const fix of remark.fixes) {
      const button = element("button", {
        type: "button",
        class: "button-quiet button-fix",
        text: this.say("fix", fix.label),
      });
      button.addEventListener("click", () => this.take(fix));
      item.append(" ", button);
    }
    return item;
  }

  showRemarks() {
    const items = this.live.remarks.slice(0, 12).map((remark) => {
      const item = this.remarkItem(remark);
      const where = remark.bar >= 0
        ? this.say("bar", remark.bar) + (remark.at ? `, ${remark.at}` : "")
        : this.say("where", remark.line);
      const go = element("a", { href: `#${this.area.id}-editor`, text: where, class: "remark-where" });
      go.addEventListener("click", (event) => {
        event.preventDefault();
        this.part("text-box").open = true;
        this.text.select(remark.from, remark.to);
      });
      item.prepend(go, " ");
      return item;
    });
    this.part("remarks").replaceChildren(...(items.length ? [element("ul", {}, ...items)] : []));
  }

  showSettings() {
    for (const [name, input] of this.settings) {
      const said = this.live.settings.find((setting) => setting.name === name)?.value ?? "";
      if (document.activeElement !== input) input.value = said;
    }
  }

  showWalk() {
    const box = this.part("walk");
    box.hidden = !this.live.systems.length;
    if (box.open) {
      box.querySelector("ol").replaceChildren(...this.live.walk.map((step) => element("li", { text: step })));
    }
  }

  // --- the bar in hand

  openBar(number, at) {
    this.last = "strip";
    if (!this.live?.bars.some((bar) => bar.number === number)) return;
    const before = this.strip.bar;
    this.strip.bar = number === before ? number : this.strip.bar;
    this.strip.open(number);
    if (before !== number) this.show();
    this.strip.focus(at ?? "first");
    this.strip.host.scrollIntoView({ block: "nearest" });
  }

  /** Opens a bar; one that is not written yet is added. */
  writeBar(number) {
    if (this.live?.bars.some((bar) => bar.number === number)) this.openBar(number, "first");
    else this.addBar();
  }

  closeStrip(focus = true) {
    const bar = this.strip.bar;
    this.strip.shut();
    this.show();
    if (focus) this.spot(bar)?.focus();
  }

  /** The bar in hand is there no more, after an undo perhaps; whoever wrote in it goes on where it was. */
  loseBar() {
    const held = this.part("strip").contains(document.activeElement);
    const left = Math.min(this.strip.bar, this.live.bars.at(-1)?.number ?? 0);
    this.closeStrip(false);
    if (held) (this.spot(left) ?? this.button("add-bar")).focus();
  }

  /** Where writing goes on. */
  standAt(bar, at) {
    this.here = { bar, at };
    this.last = "strip";
    this.where();
  }

  where() {
    const bar = this.live?.bars.find((one) => one.number === this.here.bar);
    if (!bar && this.live?.bars.length && this.last !== "text") this.here = { bar: this.live.bars[0].number, at: 0 };
    const full = bar && this.here.at >= 4 * bar.counts; // what comes next begins the bar after it
    const text = this.live?.bars.length && this.here.bar !== null
      ? this.say("place", this.here.bar + (full ? 1 : 0), countAt(full ? 0 : this.here.at))
      : this.say("nowhere");
    this.part("place").textContent = this.last === "text" ? "" : text;
  }

  async addBar() {
    const last = this.strip.bar ?? this.live?.bars.at(-1)?.number ?? 0;
    if (await this.edit({ edit: "add-bar", bar: last })) {
      const numbers = this.live.bars.map((bar) => bar.number);
      this.openBar(numbers.includes(last + 1) ? last + 1 : numbers.at(-1), "first");
    }
  }

  // --- writing by place

  /** Writes at the place in hand and goes on by the step; into the text where the cursor was there last. */
  writePlace(place) {
    this.writing = this.awaited((this.writing ?? Promise.resolve()).then(() => this.write(place)));
    return this.writing;
  }

  async write(place) {
    const technique = this.part("technique").value;
    const silent = place === "rest" || place === "hold";
    const event = technique && !silent ? `${place} ${technique}` : place;
    if (this.last === "text") return this.intoText(event);
    if (!this.live?.bars.length && !(await this.edit({ edit: "add-bar", bar: 0 }))) return;
    if (this.here.bar === null) this.here = { bar: this.live.bars[0].number, at: 0 };
    const step = Number(this.part("step").value);
    const together = this.part("together").checked && this.before;
    if (together) return this.alter((events) => `${events}+${event}`, this.before);
    if (step === 0) return this.alter((events) => (/^rest$/.test(events) ? event : `${events}, ${event}`), this.here);
    await this.stepOn(event, step);
  }

  intoText(event) {
    const before = this.text.before();
    const counted = /^\s*\d/.test(before);
    const gap = !counted || /(^|[,+]\s*|\d[e&a]?\s\s+)$/.test(before) ? "" : this.part("together").checked ? "+" : ", ";
    this.text.insert(gap + event);
  }

  column(spot) {
    const bar = this.live.bars.find((one) => one.number === spot.bar);
    return bar?.columns.filter((one) => quarters(one.at) <= spot.at).at(-1);
  }

  async alter(change, spot) {
    const column = this.column(spot);
    if (!column) return;
    await this.edit({ edit: "events", bar: spot.bar, at: column.at, events: change(column.events) });
  }

  async stepOn(event, step) {
    let { bar, at } = this.here;
    let view = this.live.bars.find((one) => one.number === bar);
    if (!view || at >= 4 * view.counts) {
      const next = view ? view.number + 1 : this.live.bars[0].number;
      if (!this.live.bars.some((one) => one.number === next) && !(await this.edit({ edit: "add-bar", bar }))) return;
      bar = next;
      at = 0;
      view = this.live.bars.find((one) => one.number === bar);
    }
    const wrote = await this.edit({ edit: "step", bar, at: countAt(at), step, unit: view.unit, events: event });
    if (!wrote) return;
    this.before = { bar, at };
    this.here = { bar, at: at + step };
    if (this.strip.bar !== bar) {
      this.strip.open(bar);
      this.show();
    }
    this.where();
  }

  // --- pitches

  toggleMidi() {
    if (this.midi.on) this.midi.stop();
    else this.midi.start();
  }

  midiTold(word, value) {
    const button = this.button("midi");
    this.midiWord ??= button.textContent;
    button.textContent = word === "midiOn" ? this.say(word, value) : this.midiWord;
    this.tell(word && word !== "midiOn" ? this.say(word) : "");
  }

  /** The best place for pitches, as the fingering search sees it after what was written before. */
  async pitches(pitches) {
    const before = (this.played ?? []).slice(-4);
    const said = await this.ofText("places", { pitches: pitches.join(" "), before: before.join(" ") });
    if (!said) return;
    const { event } = said;
    if (!event) return this.tell(this.say("noPlace"));
    this.played = [...before, event];
    await this.writePlace(event);
  }

  async showWays(bar, host) {
    const said = await this.ofText("ways", { bar });
    if (!said) return;
    this.tell("");
    const { ways, text } = said;
    if (!ways.length) {
      host.replaceChildren(element("p", { class: "hint", text: this.say("waysNone") }));
      return;
    }
    const items = ways.map((way, place) => {
      const take = element("button", {
        type: "button",
        class: "button-quiet button-fix",
        text: this.say("waysTake", place + 1),
      });
      take.addEventListener("click", () => {
        if (text === this.text.value()) this.take(way);
      });
      return element(
        "li",
        {},
        element("code", { text: way.places }),
        " ",
        element("span", { text: way.why }),
        " ",
        take,
      );
    });
    const list = element("ol", { class: "ways" }, ...items);
    host.replaceChildren(list);
    list.addEventListener("keydown", (event) => {
      const chosen = ways[Number(event.key) - 1];
      if (chosen && text === this.text.value()) this.take(chosen);
    });
    list.querySelector("button").focus();
  }

  async listen() {
    if (this.player.playing) return this.player.stop();
    await this.settled();
    const bar = this.strip.bar ?? this.here.bar ?? this.live?.bars[0]?.number;
    if (bar === undefined || bar === null) return;
    const asked = { text: this.text.value(), bar, percent: this.part("percent").value };
    if (this.part("band").checked) asked.band = "yes";
    this.player.play(asked);
  }
}
