/**
 * What is done with lessons on their pages: opened, played, repeated. Keeps sums and no record of anybody; who has been counted
 * already is known in memory alone, for a day. Knows no page.
 */
package groundbass.audience.visit;
