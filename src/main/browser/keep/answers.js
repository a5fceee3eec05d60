// What the worker answers: pages come from the server, and from a copy only where it cannot be reached; parts that never
// change come from the copy that has them. Everything else is left to the browser.
import { noteAt, noteOf, offlinePage, pageOf, partOf, partsBelow } from "./copies.js";
import { cut } from "./range.js";

/** Milliseconds after which a page that is kept is shown from its copy, on a line that hardly carries anything. */
const PATIENCE = 8000;
/** The desk; and files to take home, which a browser fetches and goes on fetching by itself. */
const NEVER_OURS = /^\/(desk|files)(\/|$)/;

/**
 * The answer to a request; null where the browser is to fetch it by itself.
 * @param {Request} request
 * @returns {Promise<Response> | null}
 */
export function answerTo(request) {
  const { origin, pathname, search } = new URL(request.url);
  if (origin !== location.origin || request.method !== "GET" || NEVER_OURS.test(pathname)) return null;
  if (request.mode === "navigate") return page(request, pathname, search);
  if (pathname.startsWith("/sheet/")) return sheet(request, pathname);
  const isPlayed = pathname.startsWith("/play/") && ["", "image"].includes(request.destination);
  const isPart = pathname.startsWith("/assets/") || isPlayed;
  return isPart ? part(request) : null;
}

async function page(request, path, search) {
  const kept = await keptPage(path, search).catch(() => null); // a storage that fails must not take the net away
  try {
    return await (kept ? soon(fetch(request)) : fetch(request));
  } catch {
    return kept ?? await withoutNet(path);
  }
}

/** The page of a copy, also by the permanent address of its lesson; null where it is not kept. */
async function keptPage(path, search) {
  const lesson = path.match(/^\/e\/([^/]+)$/)?.[1];
  if (lesson) {
    const note = await noteOf(lesson);
    return note?.whole ? Response.redirect(location.origin + note.path + search) : null;
  }
  const note = await noteAt(path);
  return note ? pageOf(note) : null;
}

/** In the place of a page that is not here: the list of what is. */
async function withoutNet(path) {
  const list = await offlinePage();
  if (!list) return Response.error();
  return path === "/kept" ? list : new Response(list.body, { status: 503, headers: list.headers });
}

async function part(request) {
  try {
    const kept = await partOf(request.url);
    if (kept) return await cut(request, kept);
  } catch {
    // a storage that fails must not take the net away
  }
  return fetch(request);
}

/** Where a sheet was not kept for this width, that of the nearest serves: it fills the screen with other notes. */
async function sheet(request, path) {
  try {
    return await fetch(request);
  } catch {
    const [, start, width] = path.match(/^(.*\/)(\d+)$/) ?? [];
    const away = (other) => Math.abs(Number(other.slice(start.length)) - Number(width));
    const [nearest] = start ? (await partsBelow(start)).sort((one, other) => away(one) - away(other)) : [];
    return (nearest && await partOf(nearest)) || Response.error();
  }
}

function soon(answer) {
  let timer = 0;
  const late = new Promise((_, give) => {
    timer = setTimeout(() => give(new Error("no answer in time")), PATIENCE);
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}
