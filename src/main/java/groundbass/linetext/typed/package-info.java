/** What was typed, read but not yet given a time. Knows nothing of how it was read. */
package groundbass.linetext.typed;
