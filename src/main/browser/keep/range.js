// A part of what is kept whole, as a server would send it (RFC 9110 section 14).

/**
 * Which bytes a `Range` field asks for: `{first, last}`; null where all are to be sent, since the field is missing, asks
 * for several parts or is none of the standard's (section 14.2 lets it be ignored); "none" where there are no such bytes.
 *
 * @param {string | null} field
 * @param {number} size of the whole, in bytes
 * @returns {{first: number, last: number} | "none" | null}
 */
export function bytesOf(field, size) {
  const [, from, to] = field?.match(/^bytes=(\d*)-(\d*)$/) ?? [];
  if (from === undefined || from + to === "" || (from && to && Number(to) < Number(from))) return null;
  const first = from ? Number(from) : Math.max(0, size - Number(to));
  const last = from && to ? Math.min(Number(to), size - 1) : size - 1;
  return first > last ? "none" : { first, last };
}

/**
 * A whole answer, or the part of it that the request asks for.
 * @param {Request} request
 * @param {Response} whole
 */
export async function cut(request, whole) {
  const field = request.headers.get("Range");
  if (field === null) return whole;
  const blob = await whole.blob();
  const part = bytesOf(field, blob.size);
  const headers = new Headers({ "Content-Type": whole.headers.get("Content-Type") ?? blob.type });
  if (part === null) return new Response(blob, { headers });
  if (part === "none") {
    headers.set("Content-Range", `bytes */${blob.size}`);
    return new Response(null, { status: 416, headers });
  }
  headers.set("Content-Range", `bytes ${part.first}-${part.last}/${blob.size}`);
  return new Response(blob.slice(part.first, part.last + 1), { status: 206, headers });
}
