// The strip of the bar in hand, right below its system: a column for each count, under its note.
import { element } from "../../common/page.js";
import { shape } from "../../common/svg.js";
import { Choices } from "./choices.js";
import { Passage } from "./passage.js";
import { completeChords, completeEvents, completeTaken, countAt, quarters } from "./words.js";

const TAKEN = /^\s*(=|as\b)\s*(bar\s*)?\d/; // another bar named where this one's notes are written
const WAIT = 350; // milliseconds after the last key, before a copied count becomes one of its own

export class Strip {
  constructor(host, desk) {
    this.host = host;
    this.desk = desk;
    this.columns = new Map(); // by label
    this.bar = null;
    this.current = null;
    this.chordsOf = null; // the bar whose chords are being typed, until they are written
    this.takenOf = null;
    const { say } = desk;
    this.host.className = "strip";
    this.host.setAttribute("role", "group");
    this.leads = shape("svg", { class: "strip-leads", "aria-hidden": "true" });
    this.row = element("div", { class: "strip-columns" });
    this.note = element("p", { class: "hint" });
    this.chords = element("input", { type: "text", autocomplete: "off", spellcheck: "false" });
    const chordLabel = element(
      "label",
      { class: "stand-choice" },
      element("span", { text: say("chords") }),
      this.chords,
    );
    this.chordChoices = new Choices(this.chords, say("completions"), (typed) => completeChords(typed, this.desk.words));
    this.chords.addEventListener("change", () => this.writeChords());
    this.chords.addEventListener("input", () => {
      this.chordsOf = this.bar;
      this.chordChoices.offer(1);
    });
    this.chords.addEventListener("keydown", (event) => this.chordKey(event));
    this.taken = element("input", {
      type: "text",
      autocomplete: "off",
      spellcheck: "false",
      placeholder: say("takenHint"),
    });
    const takenLabel = element("label", { class: "stand-choice" }, element("span", { text: say("taken") }), this.taken);
    this.takenChoices = new Choices(this.taken, say("completions"), (typed) => completeTaken(typed, this.desk.words));
    this.taken.addEventListener("change", () => this.writeTaken());
    this.taken.addEventListener("input", () => {
      this.takenOf = this.bar;
      this.takenChoices.offer(1);
    });
    this.taken.addEventListener("keydown", (event) => {
      if (this.takenChoices.key(event)) return event.preventDefault();
      if (event.key !== "Enter") return;
      event.preventDefault();
      this.writeTaken();
    });
    this.ask = {};
    for (const name of ["addCount", "removeCount", "addBar", "ways", "close", "deleteBar"]) {
      this.ask[name] = element("button", {
        type: "button",
        class: name === "deleteBar" ? "button-danger" : "button-quiet",
      });
      this.ask[name].addEventListener("click", () => this[name]());
    }
    this.ask.addBar.textContent = say("addBar");
    this.ask.close.textContent = say("close");
    this.ask.ways.textContent = say("ways");
    const tools = element("div", { class: "stand-tools" }, chordLabel, takenLabel, ...Object.values(this.ask));
    this.passage = new Passage(desk);
    this.remarks = element("ul", { class: "strip-remarks" });
    this.others = element("div", { class: "strip-ways", role: "status" });
    this.host.append(this.leads, this.row, this.note, this.remarks, tools, this.passage.box, this.others);
    this.tools = tools;
    this.host.addEventListener("keydown", (event) => this.anyKey(event));
    new ResizeObserver(() => this.spread()).observe(host);
  }

  view(number = this.bar) {
    return this.desk.live?.bars.find((bar) => bar.number === number);
  }

  open(number, at) {
    if (this.bar !== number) {
      this.writeChords(); // of the bar that was in hand
      this.writeTaken();
      this.columns.clear();
      this.row.replaceChildren();
      this.others.replaceChildren();
      this.current = null;
    }
    this.bar = number;
    this.passage.begin(number);
    this.host.hidden = false;
    this.host.setAttribute("aria-label", this.desk.say("bar", number));
    this.update();
    if (at !== undefined) this.focus(at);
  }

  shut() {
    this.bar = null;
    this.host.hidden = true;
  }

  /** The column of a count, or the one that it falls into; the first or last for "first" and "last". */
  focus(at) {
    const all = [...this.columns.values()];
    if (!all.length) return;
    let column = at === "last" ? all.at(-1) : all[0];
    if (at !== "first" && at !== "last") {
      column = all.filter((one) => quarters(one.view.at) <= quarters(at)).at(-1) ?? all[0];
    }
    column.input.focus();
    if (at === "last") column.input.setSelectionRange(column.input.value.length, column.input.value.length);
    else column.input.select();
  }

  /** Brings the columns to what the text says now. What is being typed is left alone. */
  update() {
    const view = this.view();
    if (!view) return;
    const { say } = this.desk;
    const labels = view.columns.map((column) => column.label + "@" + column.at);
    for (const [label, column] of this.columns) {
      if (!labels.includes(label)) {
        column.box.remove();
        column.mark?.clear();
        this.columns.delete(label);
      }
    }
    view.columns.forEach((one, place) => this.put(labels[place], one, place));
    this.columns = new Map(labels.map((label) => [label, this.columns.get(label)]));
    if (this.chordsOf === null) this.chords.value = view.chords;
    this.chords.disabled = !view.headed;
    if (this.takenOf === null) this.taken.value = view.taken;
    this.taken.disabled = !view.headed;
    this.note.textContent = view.copied >= 0 ? say("copied", view.copied) : "";
    this.note.hidden = view.copied < 0;
    this.ask.deleteBar.textContent = say("deleteBar", view.number);
    this.showRemarks();
    this.showAsks();
    this.spread();
  }

  put(label, view, place) {
    let column = this.columns.get(label);
    if (!column) {
      column = this.make(view);
      this.columns.set(label, column);
    }
    column.view = view;
    if (this.row.children[place] !== column.box) this.row.insertBefore(column.box, this.row.children[place] ?? null);
    column.mark?.clear();
    column.mark = view.from < 0 ? null : this.desk.text.follow(view.from, view.to);
    column.box.classList.toggle("strip-copied", view.from < 0);
    const typing = document.activeElement === column.input && column.pending;
    if (typing && column.mark) {
      column.pending = false;
      this.desk.text.write(column.mark, column.input.value);
    } else if (!typing && column.input.value !== view.events) {
      this.set(column, view.events);
    }
    this.fit(column);
  }

  set(column, value) {
    const { selectionStart, selectionEnd } = column.input;
    column.input.value = value;
    if (document.activeElement === column.input) column.input.setSelectionRange(selectionStart, selectionEnd);
    this.fit(column);
  }

  fit(column) {
    column.input.style.width = `${Math.max(6, column.input.value.length + 2)}ch`;
  }

  make(view) {
    const { say, words } = this.desk;
    const id = `strip-${++this.desk.ids}`;
    const input = element("input", {
      id,
      type: "text",
      autocomplete: "off",
      autocapitalize: "off",
      spellcheck: "false",
      class: "code",
      "aria-label": say("count", this.bar, view.label),
    });
    const label = element("label", { for: id, text: view.label, "aria-hidden": "true" });
    const box = element("div", { class: "strip-column" }, label, input);
    const column = { bar: this.bar, box, input, view, mark: null, pending: false };
    column.choices = new Choices(
      input,
      say("completions"),
      (typed) => completeEvents(typed, words, this.desk.strings()),
    );
    input.addEventListener("input", () => this.typed(column));
    input.addEventListener("focus", () => this.hold(column));
    input.addEventListener("keydown", (event) => this.key(event, column));
    return column;
  }

  hold(column) {
    this.current = column;
    this.desk.places.standAt(this.bar, quarters(column.view.at));
    this.showAsks();
  }

  typed(column) {
    this.fit(column);
    column.choices.offer(2);
    if (column.mark) {
      this.desk.text.write(column.mark, column.input.value);
    } else {
      column.pending = true;
      clearTimeout(column.timer);
      column.timer = setTimeout(() => this.own(column), WAIT);
    }
    this.spread();
  }

  /** A count that only a copied bar says gets a line of its own, also where another bar is in hand by then. */
  own(column) {
    clearTimeout(column.timer);
    if (column.mark || !column.pending) return Promise.resolve();
    return this.desk.edit({
      edit: "events",
      bar: column.bar,
      at: column.view.at,
      events: column.input.value || "rest",
    });
  }

  /** After an undo: what stands in the text stands in the columns. */
  reread() {
    for (const column of this.columns.values()) {
      const value = column.mark ? this.desk.text.read(column.mark) : null;
      if (value !== null && value !== column.input.value) this.set(column, value);
    }
  }

  neighbour(column, by) {
    const all = [...this.columns.values()];
    return all[all.indexOf(column) + by];
  }

  key(event, column) {
    if (column.choices.key(event)) return event.preventDefault();
    const input = column.input;
    const atStart = input.selectionStart === 0 && input.selectionEnd === 0;
    const atEnd = input.selectionStart === input.value.length && input.selectionEnd === input.value.length;
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
    if (event.key === "Enter" && event.shiftKey) this.addCount();
    else if (event.key === "Enter" && event.ctrlKey) this.addBar();
    else if (event.altKey && event.key.toLowerCase() === "r") this.fix(column);
    else if (event.key === "Enter" && TAKEN.test(input.value)) this.takeOver(input.value);
    else if (event.key === "Enter") this.step(column, 1, true);
    else if (event.key === "Tab" && plain) {
      if (!this.step(column, event.shiftKey ? -1 : 1, false)) return;
    } else if (event.key === "ArrowRight" && atEnd && plain && !event.shiftKey) this.step(column, 1, false);
    else if (event.key === "ArrowLeft" && atStart && plain && !event.shiftKey) this.step(column, -1, false);
    else if (event.key === "ArrowDown" && plain) this.chords.disabled ? this.ask.addCount.focus() : this.chords.focus();
    else return;
    event.preventDefault();
  }

  /** To the next count, in the next bar where this one ends. Whether there was one. */
  step(column, by, more) {
    this.own(column);
    const next = this.neighbour(column, by);
    if (next) {
      next.input.focus();
      next.input.select();
      return true;
    }
    const bar = this.desk.live.bars.find((one) => one.number === this.bar + by);
    if (bar) {
      this.desk.openBar(bar.number, by > 0 ? "first" : "last");
      return true;
    }
    if (more) this.ask.addBar.focus();
    return false;
  }

  anyKey(event) {
    if (event.defaultPrevented || this.passage.key(event, this.bar)) return;
    if (event.key === "Escape") {
      event.preventDefault();
      this.close();
    } else if (event.key === "ArrowUp" && this.tools.contains(event.target) && event.target !== this.chords) {
      event.preventDefault();
      this.current?.input.focus();
    }
  }

  chordKey(event) {
    if (this.chordChoices.key(event)) event.preventDefault();
    else if (event.key === "Enter") {
      event.preventDefault();
      this.writeChords();
    } else if (event.key === "ArrowUp") {
      event.preventDefault();
      this.current?.input.focus();
    }
  }

  /** The chords that were typed, to the bar for which they were; what could not be written stays as it was typed. */
  async writeChords() {
    const bar = this.chordsOf;
    this.chordsOf = null;
    if (bar === null || this.chords.value === this.view(bar)?.chords) return;
    const wrote = await this.desk.edit({ edit: "chords", bar, chords: this.chords.value });
    if (!wrote && this.bar === bar && this.chordsOf === null) this.chordsOf = bar;
  }

  /** The bar that was typed to be taken over, to the one for which it was. */
  async writeTaken() {
    const bar = this.takenOf;
    this.takenOf = null;
    if (bar === null) return;
    const wrote = await this.takeOver(this.taken.value, bar);
    if (!wrote && this.bar === bar && this.takenOf === null) this.takenOf = bar;
  }

  /** The bar as an earlier one; on its own again where nothing is typed. Whether it is so now. */
  async takeOver(from, bar = this.bar) {
    if (from.trim() === (this.view(bar)?.taken ?? "")) return true;
    const wrote = await this.desk.edit({ edit: "take-over", bar, from });
    if (wrote) this.update();
    return wrote;
  }

  /** The count halfway to the next one; empty where nobody has a word for it. */
  between() {
    if (!this.current) return "";
    const view = this.view();
    const here = quarters(this.current.view.at);
    const next = this.neighbour(this.current, 1);
    const end = next ? quarters(next.view.at) : 4 * view.counts;
    const middle = here + (end - here) / 2;
    return Number.isInteger(middle) && middle > here ? countAt(middle) : "";
  }

  showAsks() {
    const { say } = this.desk;
    const between = this.between();
    this.ask.addCount.hidden = !between;
    this.ask.addCount.textContent = between ? say("addCount", between) : "";
    const own = this.current && this.current.view.from >= 0 && this.columns.size > 1;
    this.ask.removeCount.hidden = !own;
    this.ask.removeCount.textContent = own ? say("removeCount", this.current.view.label) : "";
  }

  async addCount() {
    const at = this.between();
    if (at && (await this.desk.edit({ edit: "add-count", bar: this.bar, at }))) this.focus(at);
  }

  async removeCount() {
    const at = this.current.view.at;
    if (await this.desk.edit({ edit: "remove-count", bar: this.bar, at })) this.focus(at);
  }

  async addBar() {
    const number = this.bar;
    if (await this.desk.edit({ edit: "add-bar", bar: number })) this.desk.openBar(number + 1, "first");
  }

  async deleteBar() {
    const number = this.bar;
    if (await this.desk.edit({ edit: "delete-bar", bar: number })) {
      const left = this.desk.live.bars.map((bar) => bar.number);
      if (!left.length) return this.close();
      this.desk.openBar(left.includes(number) ? number : left.at(-1), "first");
    }
  }

  async ways() {
    this.others.replaceChildren();
    await this.desk.ways.show(this.bar, this.others);
  }

  close() {
    this.desk.closeStrip();
  }

  /** What is wrong here, the nearest to the column in hand first. */
  showRemarks() {
    const { live } = this.desk;
    const here = live.remarks.filter((remark) => remark.bar === this.bar);
    this.remarks.hidden = !here.length;
    this.remarks.replaceChildren(...here.map((remark) => this.desk.said.item(remark)));
    for (const column of this.columns.values()) {
      const wrong = here.filter((remark) => this.isAt(remark, column));
      column.box.classList.toggle(
        "strip-wrong",
        wrong.some((remark) => remark.weight === "error" || remark.weight === "impossible"),
      );
      column.box.classList.toggle("strip-look", wrong.length > 0);
      column.input.title = wrong.map((remark) => remark.sentence).join(" ");
    }
  }

  isAt(remark, column) {
    return column.view.line > 0 ? remark.line === column.view.line : remark.at === column.view.at;
  }

  /** Also where the answer to the last key is still on its way. */
  async fix(column) {
    if (!(await this.desk.talk.settled())) return;
    const here = this.desk.live.remarks.filter((remark) => remark.bar === this.bar && remark.fixes.length);
    const remark = here.find((one) => this.isAt(one, column)) ?? here[0];
    if (remark) this.desk.take(remark.fixes[0]);
  }

  /** Columns stand under their notes where there is room, each with a thread to its note. */
  spread() {
    const view = this.view();
    if (!view || this.host.hidden) return;
    const room = this.host.clientWidth;
    const all = [...this.columns.values()];
    this.row.style.paddingLeft = "0px";
    const widths = all.map((column) => column.box.offsetWidth);
    const gap = 8;
    const total = widths.reduce((sum, width) => sum + width + gap, -gap);
    if (total <= room && all.length) {
      const wished = all[0].view.x * room - widths[0] / 2;
      this.row.style.paddingLeft = `${Math.max(0, Math.min(wished, room - total))}px`;
    }
    const base = this.row.getBoundingClientRect();
    this.leads.setAttribute("viewBox", `0 0 ${Math.max(1, room)} 28`);
    const threads = all
      .filter((column) => column.view.x >= 0 && column.box.offsetTop - this.row.offsetTop < 12)
      .map((column) => {
        const box = column.box.getBoundingClientRect();
        const to = box.left - base.left + Math.min(box.width / 2, 28);
        return shape("path", { d: `M${column.view.x * room} 0C${column.view.x * room} 14 ${to} 14 ${to} 28` });
      });
    this.leads.replaceChildren(...threads);
  }
}
