/**
 * Line text: what an educator types becomes a line, problems and origins, and a line becomes text again. Its sub-
 * rooms go from the characters to the edits. Knows nothing of what is made from a line.
 */
package groundbass.linetext;
