/**
 * Sentences cut into clauses of units, where every word is accounted for: a word that is not known makes its clause one
 * that was not wholly read. Knows nothing of lines.
 */
package groundbass.script.grammar;
