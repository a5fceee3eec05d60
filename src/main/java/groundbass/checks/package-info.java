/**
 * What a teacher would remark on in a line before it is taught: what cannot be played, what is unwise, what deserves
 * another look, and how hard the whole is. Each rule stands in a file of its own. Knows nothing of text positions, pages
 * or languages: a finding names notes and a message key.
 *
 * <p>Limits of hands and speed are common practice, not medicine.
 */
package groundbass.checks;
