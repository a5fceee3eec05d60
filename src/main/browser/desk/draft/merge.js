// Two texts of one field, line by line, beside the text that both began from.
import { element } from "../../common/page.js";

const NOWHERE = -1;

/** For each line of `text` its line in `other`, by their longest common subsequence; -1 where it has none. */
function align(text, other) {
  const length = Array.from({ length: text.length + 1 }, () => new Uint16Array(other.length + 1));
  for (let i = text.length - 1; i >= 0; i--) {
    for (let j = other.length - 1; j >= 0; j--) {
      length[i][j] = text[i] === other[j] ? length[i + 1][j + 1] + 1 : Math.max(length[i + 1][j], length[i][j + 1]);
    }
  }
  const found = new Array(text.length).fill(NOWHERE);
  let [i, j] = [0, 0];
  while (i < text.length && j < other.length) {
    if (text[i] === other[j]) found[i++] = j++;
    else if (length[i + 1][j] >= length[i][j + 1]) i++;
    else j++;
  }
  return found;
}

/** Whether the lines `from` to `to` (exclusive) and their neighbours stand in the base as they stand here. */
function untouched(inBase, from, to, baseLength) {
  const before = from === 0 ? NOWHERE : inBase[from - 1];
  const after = to === inBase.length ? baseLength : inBase[to];
  if ((from > 0 && before === NOWHERE) || after === NOWHERE) return false;
  if (after - before !== to - from + 1) return false;
  return inBase.slice(from, to).every((line, place) => line === before + 1 + place);
}

/**
 * The stretches in which two texts agree and differ: `{same}`, or `{mine, theirs, first}`, where `first` is the side that
 * changed its lines; mine where both did, or where nobody knows what they began from.
 */
export function stretches(mine, theirs, base) {
  const [a, b] = [mine.split("\n"), theirs.split("\n")];
  const across = align(a, b);
  const inBase = base === undefined ? null : align(a, base.split("\n"));
  const found = [];
  let [i, j] = [0, 0];
  const differ = (toA, toB) => {
    if (i === toA && j === toB) return;
    const mineStands = inBase && untouched(inBase, i, toA, base.split("\n").length);
    found.push({ mine: a.slice(i, toA), theirs: b.slice(j, toB), first: mineStands ? "theirs" : "mine" });
  };
  across.forEach((other, line) => {
    if (other === NOWHERE) return;
    differ(line, other);
    if (found.at(-1)?.same) found.at(-1).same.push(a[line]);
    else found.push({ same: [a[line]] });
    [i, j] = [line + 1, other + 1];
  });
  differ(a.length, b.length);
  return found;
}

/** Line ends as the page counts them. */
export function plain(text) {
  return text.replace(/\r\n/g, "\n");
}

/** A field of which another window stored something else: each stretch that differs is a choice. */
export class Merge {
  /** @param base what the field said when this window and the server last agreed; undefined where that is not known */
  constructor(field, other, words, base) {
    this.field = field;
    this.parts = stretches(plain(field.value), plain(other.stored), base);
    this.name = `merge-${other.field}`;
    this.box = element("section", { class: "merge" }, element("h3", { text: other.label }));
    this.parts.forEach((part, place) =>
      this.box.append(part.same ? this.same(part.same) : this.choice(part, place, words))
    );
  }

  same(lines) {
    const shown = lines.length > 4 ? [...lines.slice(0, 2), "…", ...lines.slice(-2)] : lines;
    return element("pre", { class: "merge-same", text: shown.join("\n") });
  }

  choice(part, place, words) {
    const set = element("fieldset", { class: "merge-choice" });
    const ways = part.mine.length && part.theirs.length && this.field.tagName === "TEXTAREA"
      ? ["mine", "theirs", "both"]
      : ["mine", "theirs"];
    set.append(element("legend", { text: this.box.firstChild.textContent, class: "visually-hidden" }));
    for (const way of ways) {
      const input = element("input", {
        type: "radio",
        name: `${this.name}-${place}`,
        value: way,
        id: `${this.name}-${place}-${way}`,
      });
      input.checked = way === part.first;
      const text = way === "both" ? "" : part[way].join("\n");
      set.append(
        element(
          "div",
          { class: "merge-way" },
          input,
          element("label", { for: input.id, text: words[way] }),
          ...(text ? [element("pre", { text })] : []),
        ),
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
