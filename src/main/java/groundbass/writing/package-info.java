/**
 * A line as it is written down: note values, ties, tuplets, beams, rests, voices and spellings, decided once for
 * everything that prints or tells it. Knows nothing of where on a page things stand.
 */
package groundbass.writing;
