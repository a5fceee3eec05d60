// What has to be replaced in one text so that it becomes another.

function sameStart(one, other) {
  let at = 0;
  while (at < one.length && at < other.length && one[at] === other[at]) at++;
  return at;
}

const backwards = (text) => [...text].reverse();

/**
 * The shortest single stretch of `old` that differs, and what stands in its place in `text`.
 * @param {string} old
 * @param {string} text
 */
export function difference(old, text) {
  const from = sameStart(old, text);
  const end = sameStart(backwards(old.slice(from)).join(""), backwards(text.slice(from)).join(""));
  return { from, to: old.length - end, text: text.slice(from, text.length - end) };
}
