// A list of words under an input: chosen with the arrow keys, taken with Enter or Tab, closed with Escape. While one types
// nothing is chosen, so that Enter and Tab leave what stands there as it is; asked for with Ctrl+space, the first word is.
import { targetOf } from "../../common/page.js";

let made = 0;
const NONE = -1;

export class Choices {
  /** @param find from the text before the cursor to `{from, list}` */
  constructor(input, label, find) {
    this.input = input;
    this.find = find;
    this.from = 0;
    this.chosen = NONE;
    this.list = document.createElement("ul");
    this.list.id = `choices-${++made}`;
    this.list.className = "choices";
    this.list.setAttribute("role", "listbox");
    this.list.setAttribute("aria-label", label);
    this.list.hidden = true;
    input.after(this.list);
    input.setAttribute("role", "combobox");
    input.setAttribute("aria-autocomplete", "list");
    input.setAttribute("aria-controls", this.list.id);
    input.setAttribute("aria-expanded", "false");
    input.addEventListener("blur", () => this.close());
    this.list.addEventListener("mousedown", (event) => {
      event.preventDefault();
      const option = targetOf(event).closest("[role=option]");
      if (option) this.take([...this.list.children].indexOf(option));
    });
  }

  get open() {
    return !this.list.hidden;
  }

  close() {
    this.list.hidden = true;
    this.chosen = NONE;
    this.input.setAttribute("aria-expanded", "false");
    this.input.removeAttribute("aria-activedescendant");
  }

  /**
   * @param least how many letters must be there
   * @param asked whether the writer asked for the list, and so for its first word
   */
  offer(least, asked = false) {
    const typed = this.input.value.slice(0, this.input.selectionStart);
    const found = this.find(typed);
    const words = typed.length - found.from >= least ? found.list.slice(0, 12) : [];
    if (!words.length) return this.close();
    this.from = found.from;
    this.list.replaceChildren(
      ...words.map((word, place) => {
        const option = document.createElement("li");
        option.id = `${this.list.id}-${place}`;
        option.setAttribute("role", "option");
        option.textContent = word;
        return option;
      }),
    );
    this.list.hidden = false;
    this.input.setAttribute("aria-expanded", "true");
    this.input.removeAttribute("aria-activedescendant");
    this.chosen = NONE;
    if (asked) this.choose(0);
  }

  choose(place) {
    const options = [...this.list.children];
    this.chosen = (place + options.length) % options.length;
    options.forEach((option, i) => option.setAttribute("aria-selected", String(i === this.chosen)));
    this.input.setAttribute("aria-activedescendant", options[this.chosen].id);
    options[this.chosen].scrollIntoView({ block: "nearest" });
  }

  take(place = this.chosen) {
    const word = this.list.children[place].textContent;
    const end = this.input.selectionStart;
    this.input.setRangeText(word, this.from, end, "end");
    this.close();
    this.input.dispatchEvent(new Event("input", { bubbles: true }));
    this.close();
  }

  /** Whether the key was for the list. */
  key(event) {
    if (event.ctrlKey && event.key === " ") {
      this.offer(0, true);
      return true;
    }
    if (!this.open) return false;
    if (event.key === "ArrowDown") this.choose(this.chosen + 1);
    else if (event.key === "ArrowUp") this.choose(this.chosen === NONE ? -1 : this.chosen - 1);
    else if (event.key === "Escape") this.close();
    else if (this.chosen !== NONE && takes(event)) this.take();
    else {
      if (event.key === "Enter") this.close(); // what stands there is done
      return false;
    }
    return true;
  }
}

function takes(event) {
  return (event.key === "Enter" || event.key === "Tab") && !event.shiftKey && !event.altKey && !event.ctrlKey;
}
