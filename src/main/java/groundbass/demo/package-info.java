/**
 * The demonstration: an invented series from seed data with an invented audience, marked as such. Knows nothing of
 * pages.
 */
package groundbass.demo;
