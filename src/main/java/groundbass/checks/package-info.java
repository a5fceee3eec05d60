/**
 * What a teacher would remark on in a line before it is taught: what cannot be played, what is unwise, what deserves
 * another look, and how hard the whole is. The rules stand in rooms by what they ask: {@code hand} and {@code slip}.
 */
package groundbass.checks;
