// What a page of the site names, as the server sends it to everybody.
import { asked } from "../common/patience.js";
import { USUAL } from "./fetching.js";

/** Bytes that are reckoned for a picture before it is here. */
const PICTURE = 200_000;
const LINKS = "link[rel='stylesheet'], link[rel='icon'], link[rel='preload'][as='font']";
/** Of the answer's fields those that speak of how it was sent, and not of what it is. */
const OF_THE_WAY = ["Content-Encoding", "Content-Length", "ETag", "Vary", "Date"];

/**
 * The page at a path, and the fields that it is kept with: the policy for its scripts is one of them.
 * @param {string} path
 * @param {RequestInit} ask
 */
export async function pageAt(path, ask) {
  const answer = await asked(path, { ...ask, cache: "no-store" });
  const html = await answer.text();
  const headers = new Headers(answer.headers);
  for (const name of OF_THE_WAY) headers.delete(name);
  return { html, headers, page: new DOMParser().parseFromString(html, "text/html") };
}

/** What a lesson's page says of itself. @param {Document} page */
export function lessonOf(page) {
  const place = page.querySelector("[data-keep]");
  if (!(place instanceof HTMLElement)) throw new TypeError("no lesson stands on this page");
  const { lesson = "", release = "", title = "" } = place.dataset;
  return { lesson, release, title };
}

/** Where the page finds what to play. @param {Document} page */
export function manifestsOf(page) {
  const places = /** @type {NodeListOf<HTMLElement>} */ (page.querySelectorAll("[data-manifest]"));
  return [...places].map(({ dataset }) => new URL(dataset.manifest ?? "", location.href).href);
}

/**
 * The educator's own pictures in its notes.
 * @param {Document} page
 * @returns {import("./plan.js").Part[]}
 */
export function picturesOf(page) {
  const pictures = [...page.querySelectorAll("img.notes-photo")].flatMap((one) => one.getAttribute("src") ?? []);
  return [...new Set(pictures)].map((name) => ({ address: new URL(name, location.href).href, bytes: PICTURE }));
}

/**
 * Its scripts, style sheets and typefaces.
 * @param {Document} page
 * @returns {import("./plan.js").Part[]}
 */
export function assetsOf(page) {
  const links = [...page.querySelectorAll(LINKS)].map((link) => link.getAttribute("href"));
  const scripts = [...page.querySelectorAll("script[src]")].map((script) => script.getAttribute("src"));
  const names = new Set([...links, ...scripts].flatMap((name) => name ?? []));
  return [...names].map((name) => ({ address: new URL(name, location.href).href, bytes: USUAL }));
}
