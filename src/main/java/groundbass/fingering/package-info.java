/**
 * Where on the neck, and with which fingers, notes lie best: a search over hand positions with a price for every effort.
 * Knows nothing of text, sheets or pages, and gives no medical advice: its limits are common practice.
 */
package groundbass.fingering;
