/**
 * Seconds in minutes and seconds, with so many digits of a second: `1:05.3`.
 * @param {number} seconds
 */
export function minutes(seconds, digits = 1) {
  const unit = 10 ** digits;
  const all = Math.round(seconds * unit);
  const whole = Math.floor(all / (60 * unit));
  const rest = ((all - 60 * unit * whole) / unit).toFixed(digits);
  return `${whole}:${rest.padStart(digits ? 3 + digits : 2, "0")}`;
}
