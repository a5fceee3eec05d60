/**
 * The words of talk about lines, language by language: what a word may be, and what its neighbours are. Knows nothing of
 * how they make clauses.
 */
package groundbass.script.lexicon;
