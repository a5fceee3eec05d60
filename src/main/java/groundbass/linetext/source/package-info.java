/**
 * The text as characters: lines, spans, tokens, counts, keywords and limits. Knows nothing of what they say about a
 * bass line.
 */
package groundbass.linetext.source;
