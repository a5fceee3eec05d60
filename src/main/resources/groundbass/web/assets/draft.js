// Saves the form of an episode as one types. Until the server has said that it has it, a copy stays in this browser; what
// another window saved is shown beside what was typed here, line by line, and never overwritten unseen.
import { element } from "./line-strip.js";

const SOON = 900; // milliseconds after the last key
const AGAIN = 6000;
const IGNORED = new Set(["base", "email", "password", "local", "revisionNote"]);

export class Draft {
  /** @param filled called after fields were given other values */
  constructor(form, filled) {
    this.form = form;
    this.filled = filled;
    this.word = document.getElementById("draft-word");
    this.words = form.querySelector("[data-draft]").dataset;
    this.key = `groundbass-draft:${form.dataset.path}`;
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
      else if (field.tagName === "SELECT") [...field.options].forEach((option) => (option.selected = option.defaultSelected));
      else if (field.defaultValue !== undefined) field.value = field.defaultValue;
    }
    const came = this.typed();
    for (const [field, value, checked] of now) {
      if (field.type === "checkbox" || field.type === "radio") field.checked = checked;
      else if (field.value !== value && field.type !== "file") field.value = value;
    }
    return came;
  }

  values(asItCame = false) {
    const fields = [...this.form.elements].filter((field) => field.id);
    return new Map(fields.map((field) => [field.id, plain(asItCame ? (field.defaultValue ?? field.value) : field.value)]));
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
   * The button that saves does so without leaving the page. Others send the form itself, which must not run into a save
   * that is under way.
   */
  leave(event) {
    clearTimeout(this.timer);
    const number = this.form.elements.number;
    const plain = !event.submitter?.hasAttribute("formaction") && (!number || number.value === number.defaultValue);
    if (plain && !this.expired && !this.conflict) {
      event.preventDefault();
      if (this.dirty) this.save();
      else if (!this.sending) this.say("saved");
      return;
    }
    this.leaving = true;
    if (!this.sending) return;
    event.preventDefault();
    this.sending.finally(() => this.form.requestSubmit(event.submitter));
  }

  keepLocal() {
    try {
      localStorage.setItem(this.key, JSON.stringify({ base: this.form.elements.base.value, typed: this.typed() }));
    } catch {
      // no room or not allowed: the form itself still has it, and leaving asks
    }
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
      const answer = await fetch(`${this.form.dataset.path}/draft`, { method: "POST", body: new URLSearchParams(new FormData(this.form)) });
      this.sending = null;
      this.expired = answer.status === 401;
      if (this.expired) return this.say("expired", true);
      if (answer.status === 409) return this.meet(await answer.json());
      if (!answer.ok) throw new Error(String(answer.status));
      this.known = values;
      this.saved(typed, await answer.json());
    } catch (problem) {
      this.sending = null;
      this.say(/^4/.test(problem.message) ? "refused" : "failed", true);
      this.timer = setTimeout(() => this.save(), AGAIN);
    }
  }

  saved(typed, answer) {
    this.acknowledged = typed;
    this.form.elements.base.value = answer.version;
    const time = document.querySelector("#saved-at time");
    if (time) {
      time.dateTime = answer.at;
      time.textContent = new Date(answer.at).toLocaleString(document.documentElement.lang, { dateStyle: "long", timeStyle: "short" });
    }
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
    if (!kept || kept.typed === this.acknowledged) return this.dropLocal();
    const box = document.getElementById("draft-local");
    box.hidden = false;
    box.querySelector("[data-do=take]").addEventListener("click", () => {
      box.hidden = true;
      this.fill(new Map(Object.entries(groups(JSON.parse(kept.typed)))));
      this.changed();
    });
    box.querySelector("[data-do=drop]").addEventListener("click", () => {
      box.hidden = true;
      this.dropLocal();
    });
  }

  /** Gives fields their values again, by name and order. */
  fill(values) {
    for (const [name, list] of values) {
      const fields = [...this.form.querySelectorAll(`[name="${CSS.escape(name)}"]`)].filter((field) => field.type !== "hidden");
      fields.forEach((field, place) => {
        if (field.type === "checkbox") field.checked = list.includes(field.value);
        else if (place < list.length) field.value = list[place].replace(/\r\n/g, "\n");
      });
    }
    this.filled();
  }

  // --- two windows

  /** What is stored is what this window knew: somebody saved something else, on another page. Only the rest is asked. */
  meet({ version, others }) {
    const asked = others.filter((other) => !other.field || this.known.get(other.field) !== plain(other.stored));
    if (!asked.length) {
      this.form.elements.base.value = version;
      return this.save();
    }
    this.ask(version, asked);
  }

  ask(version, others) {
    this.conflict = true;
    this.say("conflict", true);
    const box = document.getElementById("draft-conflict");
    const list = box.querySelector("[data-part=differences]");
    const known = others.filter((other) => other.field && document.getElementById(other.field));
    box.querySelector("[data-part=reload]").hidden = known.length === others.length;
    const merges = known.map((other) => new Merge(document.getElementById(other.field), other, this.words, this.known));
    list.replaceChildren(...merges.map((merge) => merge.box));
    box.hidden = false;
    box.scrollIntoView({ block: "start" });
    box.querySelector("h2").focus();
    const keep = box.querySelector("[data-do=keep]");
    keep.onclick = () => {
      merges.forEach((merge) => merge.settle());
      this.form.elements.base.value = version;
      this.conflict = false;
      this.acknowledged = "";
      box.hidden = true;
      this.filled();
      this.save();
    };
    box.querySelector("[data-do=all-mine]").onclick = () => merges.forEach((merge) => merge.choose("mine"));
    box.querySelector("[data-do=all-theirs]").onclick = () => merges.forEach((merge) => merge.choose("theirs"));
  }
}

/** Line ends as the page counts them. */
function plain(text) {
  return text.replace(/\r\n/g, "\n");
}

function groups(pairs) {
  const found = {};
  for (const [name, value] of pairs) (found[name] ??= []).push(value);
  return found;
}

/** The stretches of lines in which two texts agree and differ, by their longest common subsequence. */
export function stretches(mine, theirs) {
  const [a, b] = [mine.split("\n"), theirs.split("\n")];
  const length = Array.from({ length: a.length + 1 }, () => new Uint16Array(b.length + 1));
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      length[i][j] = a[i] === b[j] ? length[i + 1][j + 1] + 1 : Math.max(length[i + 1][j], length[i][j + 1]);
    }
  }
  const found = [];
  const put = (kind, line) => {
    if (kind === "same" ? found.at(-1)?.same : found.at(-1) && !found.at(-1).same) {
      // goes on
    } else found.push(kind === "same" ? { same: [] } : { mine: [], theirs: [] });
    found.at(-1)[kind].push(line);
  };
  let [i, j] = [0, 0];
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      put("same", a[i++]);
      j++;
    } else if (j >= b.length || (i < a.length && length[i + 1][j] >= length[i][j + 1])) put("mine", a[i++]);
    else put("theirs", b[j++]);
  }
  return found;
}

class Merge {
  constructor(field, other, words, known) {
    this.field = field;
    this.first = plain(field.value) === known.get(field.id) ? "theirs" : "mine";
    this.parts = stretches(field.value.replace(/\r\n/g, "\n"), other.stored.replace(/\r\n/g, "\n"));
    this.name = `merge-${other.field}`;
    this.box = element("section", { class: "merge" }, element("h3", { text: other.label }));
    this.parts.forEach((part, place) => this.box.append(part.same ? this.same(part.same) : this.choice(part, place, words)));
  }

  same(lines) {
    const shown = lines.length > 4 ? [...lines.slice(0, 2), "…", ...lines.slice(-2)] : lines;
    return element("pre", { class: "merge-same", text: shown.join("\n") });
  }

  choice(part, place, words) {
    const set = element("fieldset", { class: "merge-choice" });
    const ways = part.mine.length && part.theirs.length && this.field.tagName === "TEXTAREA" ? ["mine", "theirs", "both"] : ["mine", "theirs"];
    set.append(element("legend", { text: this.box.firstChild.textContent, class: "visually-hidden" }));
    for (const way of ways) {
      const input = element("input", { type: "radio", name: `${this.name}-${place}`, value: way, id: `${this.name}-${place}-${way}` });
      input.checked = way === this.first;
      const text = way === "both" ? "" : part[way].join("\n");
      set.append(
        element("div", { class: "merge-way" }, input, element("label", { for: input.id, text: words[way] }), ...(text ? [element("pre", { text })] : [])),
      );
    }
    return set;
  }

  choose(way) {
    this.box.querySelectorAll(`input[value="${way}"]`).forEach((input) => (input.checked = true));
  }

  settle() {
    const lines = this.parts.flatMap((part, place) => {
      if (part.same) return part.same;
      const way = this.box.querySelector(`input[name="${CSS.escape(`${this.name}-${place}`)}"]:checked`).value;
      return way === "both" ? [...part.mine, ...part.theirs] : part[way];
    });
    this.field.value = lines.join("\n");
  }
}
