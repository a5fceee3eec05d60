// Sizes and days as the reader writes them.

import { readersLanguage } from "../common/language.js";

const written = readersLanguage();
/** Decimal units (1 kB = 1000 bytes, IEC 80000-13). */
const MEGA = 1e6;

/** @param {number} bytes */
export function sizeWords(bytes) {
  const digits = bytes < 10 * MEGA ? 1 : 0;
  const options = { style: "unit", unit: "megabyte", maximumFractionDigits: digits };
  return new Intl.NumberFormat(written, /** @type {Intl.NumberFormatOptions} */ (options)).format(
    Math.max(bytes, MEGA / 10) / MEGA,
  );
}

/** The day of a moment. @param {string} at ISO 8601 */
export function dayWords(at) {
  return new Intl.DateTimeFormat(written, { dateStyle: "long" }).format(new Date(at));
}
