/**
 * The calendar: what goes out when, what must be right before, and going live exactly once. Knows nothing of pages.
 */
package groundbass.publishing;
