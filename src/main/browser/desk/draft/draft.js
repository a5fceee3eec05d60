// Saves the form of a room as one types. Until the server has said that it has it, a copy stays in this browser; what
// another window saved is shown beside what was typed here, line by line, and never overwritten unseen.
import { readersLanguage } from "../../common/language.js";
import { byId, element, inside, partsOf, typedIn } from "../../common/page.js";
import { Merge, plain } from "./merge.js";

const SOON = 900; // milliseconds after the last key
const AGAIN = 6000;
const IGNORED = new Set(["base"]);

export class Draft {
  /**
   * @param filled called after fields were given other values
   * @param stored called when the server has something new
   */
  constructor(form, filled, stored) {
    this.form = form;
    this.filled = filled;
    this.stored = stored;
    this.word = byId("draft-word", HTMLElement);
    this.words = form.querySelector("[data-draft]").dataset;
    this.here = new URL(form.action).pathname;
    this.key = `groundbass-draft:${this.here}`;
    this.acknowledged = this.came();
    this.known = this.values(true); // what each field said when the server last had it
    this.offerLocal();
    if (this.dirty) this.changed(); // typed before this script was there
    form.addEventListener("input", (event) => {
      if (!IGNORED.has(event.target.name)) this.changed();
    });
    window.addEventListener("online", () => this.save());
    form.addEventListener("submit", (event) => this.leave(event));
  }

  /** What the form says, as text that can be compared. */
  typed() {
    return JSON.stringify([...new FormData(this.form)].filter(([name]) => !IGNORED.has(name)));
  }

  /** What the form said when it came from the server. */
  came() {
    const now = [...this.form.elements].map((field) => [field, field.value, field.checked]);
    for (const field of this.form.elements) {
      if (field.type === "checkbox" || field.type === "radio") field.checked = field.defaultChecked;
      else if (field.tagName === "SELECT") {
        [...field.options].forEach((option) => (option.selected = option.defaultSelected));
      } else if (field.defaultValue !== undefined) field.value = field.defaultValue;
    }
    const came = this.typed();
    for (const [field, value, checked] of now) {
      if (field.type === "checkbox" || field.type === "radio") field.checked = checked;
      else if (field.value !== value && field.type !== "file") field.value = value;
    }
    return came;
  }

  values(asItCame = false) {
    const fields = [...this.form.elements].filter((field) => field.id && field.type !== "file");
    return new Map(fields.map((field) => [field.id, valueOf(field, asItCame)]));
  }

  get dirty() {
    return this.typed() !== this.acknowledged;
  }

  say(word, wrong = false) {
    this.word.textContent = this.words[word];
    this.word.classList.toggle("said-wrong", wrong);
  }

  changed() {
    if (!this.dirty && !this.sending) return;
    this.keepLocal();
    if (this.conflict) return;
    this.say("unsaved");
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.save(), SOON);
  }

  /**
   * The button that saves does so without leaving the page. Others send the form itself, once the server has what was
   * typed, so that no copy stays here of what was saved; a save that fails does not keep them from trying.
   */
  leave(event) {
    clearTimeout(this.timer);
    const stays = !event.submitter?.name && !this.file();
    if (stays && !this.expired && !this.conflict) {
      event.preventDefault();
      this.saveNow();
      return;
    }
    if (!this.expired && !this.conflict) this.save();
    if (!this.sending) {
      this.leaving = true;
      return;
    }
    event.preventDefault();
    this.submitSaved(this.sending, event.submitter);
  }

  /** Saves at once, and says so also where there is nothing new; a form that must ask who one is asks. */
  saveNow() {
    if (this.expired) this.form.requestSubmit();
    else if (this.dirty) this.save();
    else if (!this.sending && !this.conflict) this.say("saved");
  }

  /** Whether a file waits to be sent along. */
  file() {
    return [...this.form.elements].some((field) => field.type === "file" && field.form === this.form && field.value);
  }

  /** Waits until the server has what was typed. Whether it has. */
  async settled() {
    while (!this.conflict && (this.dirty || this.sending)) {
      this.save();
      if (!this.sending) return false;
      await this.sending;
      if (this.trouble) return false;
    }
    return !this.conflict;
  }

  /** Two windows are asked about before the page is left. */
  submitSaved(sending, button) {
    sending.finally(() => {
      if (this.sending) this.submitSaved(this.sending, button);
      else if (!this.conflict) {
        this.leaving = true;
        this.form.requestSubmit(button);
      }
    });
  }

  keepLocal() {
    try {
      const copy = { typed: this.typed(), values: [...this.values()], known: [...this.known] };
      localStorage.setItem(this.key, JSON.stringify(copy));
    } catch {
      // no room or not allowed: the form itself still has it, and leaving asks
    }
  }

  /** Keeps a copy of what the server has not had. */
  keepUnsaved() {
    if (this.dirty) this.keepLocal();
  }

  dropLocal() {
    try {
      localStorage.removeItem(this.key);
    } catch {
      // nothing was kept
    }
  }

  save() {
    clearTimeout(this.timer);
    if (this.sending || this.conflict || this.leaving || !this.dirty) return;
    this.sending = this.send();
  }

  async send() {
    const typed = this.typed();
    const values = this.values();
    this.say("saving");
    try {
      const answer = await fetch(`${this.here}/draft`, { method: "POST", body: typedIn(this.form) });
      this.sending = null;
      this.expired = answer.status === 401;
      this.trouble = !answer.ok;
      if (this.expired) return this.say("expired", true);
      if (answer.status === 409) return this.meet(await answer.json());
      if (!answer.ok) throw new Error(String(answer.status));
      this.known = values;
      this.saved(typed, await answer.json());
    } catch (problem) {
      this.sending = null;
      this.trouble = true;
      this.say(/^4/.test(problem.message) ? "refused" : "failed", true);
      this.timer = setTimeout(() => this.save(), AGAIN);
    }
  }

  saved(typed, answer) {
    this.acknowledged = typed;
    this.form.elements.base.value = answer.base;
    /** @type {HTMLTimeElement | null} */
    const time = document.querySelector("#saved-at time");
    if (time) {
      time.dateTime = answer.at;
      time.textContent = new Date(answer.at).toLocaleString(readersLanguage(), {
        dateStyle: "long",
        timeStyle: "short",
      });
    }
    this.stored();
    if (this.dirty) return this.changed();
    this.dropLocal();
    this.say("saved");
  }

  // --- what was never saved

  offerLocal() {
    let kept;
    try {
      kept = JSON.parse(localStorage.getItem(this.key) ?? "null");
    } catch {
      kept = null;
    }
    if (!kept || saysTheSame(kept.typed, this.acknowledged)) return this.dropLocal();
    const box = byId("draft-local", HTMLElement);
    box.hidden = false;
    inside(box, "[data-do=take]").addEventListener("click", () => {
      box.hidden = true;
      this.putBack(kept);
    });
    inside(box, "[data-do=drop]").addEventListener("click", () => {
      box.hidden = true;
      this.dropLocal();
    });
  }

  /** The copy is like another window's text: what the server has got since the copy began is compared with it first. */
  putBack({ values, known }) {
    const stored = this.known;
    this.known = new Map(known);
    this.fill(new Map(values));
    const others = [...stored]
      .filter(([field, value]) => this.known.has(field) && this.known.get(field) !== value && this.now(field) !== value)
      .map(([field, value]) => ({ field, label: labelOf(field), stored: value }));
    if (others.length) this.ask(this.form.elements.base.value, others);
    else this.changed();
  }

  now(field) {
    return valueOf(/** @type {HTMLInputElement} */ (document.getElementById(field)));
  }

  /** Gives fields their values again; what has no field any more stays in sight, to be copied. */
  fill(values) {
    const left = [];
    for (const [id, value] of values) {
      /** @type {HTMLInputElement | null} */
      const field = /** @type {any} */ (document.getElementById(id));
      if (!field || field.form !== this.form) {
        if (this.known.get(id) !== value) left.push(value);
      } else if (field.type === "checkbox") field.checked = value === TICKED;
      else if (field.type !== "file") field.value = value;
    }
    this.showLeft(left);
    this.filled();
  }

  showLeft(left) {
    if (!left.length) return;
    const box = byId("draft-left", HTMLElement);
    box.hidden = false;
    box.append(...left.map((text) => element("pre", { text })));
  }

  // --- two windows

  /** What is stored is what this window knew: somebody saved something else, on another page. Only the rest is asked. */
  meet({ base, by, others }) {
    const asked = others.filter((other) => !other.field || this.known.get(other.field) !== plain(other.stored));
    if (!asked.length) {
      this.form.elements.base.value = base;
      return this.save();
    }
    this.ask(base, asked, by);
  }

  ask(base, others, by = "") {
    this.conflict = true;
    this.say("conflict", true);
    const box = byId("draft-conflict", HTMLElement);
    const part = partsOf(box);
    const list = part("differences");
    const known = others.filter((other) => other.field && document.getElementById(other.field));
    part("by").textContent = by;
    part("reload").hidden = known.length === others.length;
    const merges = known.map((other) =>
      new Merge(document.getElementById(other.field), other, this.words, this.known.get(other.field))
    );
    list.replaceChildren(...merges.map((merge) => merge.box));
    box.hidden = false;
    box.scrollIntoView({ block: "start" });
    inside(box, "h2").focus();
    inside(box, "[data-do=keep]").onclick = () => {
      merges.forEach((merge) => merge.settle());
      this.form.elements.base.value = base;
      this.conflict = false;
      this.acknowledged = "";
      box.hidden = true;
      this.filled();
      this.save();
    };
    for (const side of ["mine", "theirs"]) {
      inside(box, `[data-do=all-${side}]`).onclick = () => merges.forEach((merge) => merge.choose(side));
    }
  }
}

const TICKED = "yes";

/** What a field says; `asItCame`, what it said when the page came from the server. */
function valueOf(field, asItCame = false) {
  if (field.type === "checkbox") return (asItCame ? field.defaultChecked : field.checked) ? TICKED : "";
  if (asItCame && field.tagName === "SELECT") {
    return [...field.options].find((option) => option.defaultSelected)?.value ?? field.value;
  }
  return plain(asItCame ? (field.defaultValue ?? field.value) : field.value);
}

function groups(pairs) {
  const found = {};
  for (const [name, value] of pairs) (found[name] ??= []).push(value);
  return found;
}

/** Whether two forms agree in every field that both have; which fields there are changes when a lesson goes out. */
function saysTheSame(typed, acknowledged) {
  const [a, b] = [groups(JSON.parse(typed)), groups(JSON.parse(acknowledged))];
  return Object.keys(a).every((name) => !b[name] || JSON.stringify(a[name]) === JSON.stringify(b[name]));
}

/** What the page calls a field; the label of a line leads to its editor. */
function labelOf(field) {
  return document.querySelector(`label[for="${field}"], label[for="${field}-editor"]`)?.textContent ?? field;
}
