// What a room shows beside what is typed: the notes as students see them, what is wrong with drums, what an hour means.
import { targetOf, typedIn } from "../../common/page.js";

const SOON = 350; // milliseconds after the last key

/** Puts each part of `html` that has an id in the place of the one with that id; opened details stay open. */
export function replaceParts(html) {
  const parts = new DOMParser().parseFromString(html, "text/html").body;
  for (const part of parts.querySelectorAll("[id^='live-'], [id^='findings-'], #calendar")) {
    const old = document.getElementById(part.id);
    if (!old) continue;
    for (const details of old.querySelectorAll("details[open][id]")) {
      part.querySelector(`[id="${details.id}"]`)?.setAttribute("open", "");
    }
    old.replaceWith(part);
  }
}

/** Asks the address that a form names, whenever something in it is typed. */
export class Look {
  /** @param {HTMLFormElement} form */
  constructor(form) {
    this.form = form;
    this.asked = 0;
    this.timer = 0;
    form.addEventListener("input", (event) => {
      if (!targetOf(event).matches("[type=checkbox], [type=file]")) this.soon();
    });
  }

  soon(wait = SOON) {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.ask(), wait);
  }

  async ask() {
    const number = ++this.asked;
    try {
      const answer = await fetch(this.form.dataset.look ?? "", { method: "POST", body: typedIn(this.form) });
      if (answer.status === 503) return this.soon(1000 * Number(answer.headers.get("Retry-After") ?? 5));
      if (!answer.ok) throw new Error(String(answer.status));
      const html = await answer.text();
      if (number !== this.asked) return; // a later one is on its way
      replaceParts(html);
      this.tell("");
    } catch {
      this.tell(this.form.dataset.offline ?? "");
    }
  }

  tell(text) {
    const word = document.getElementById("live-word");
    if (word) word.textContent = text;
  }
}
