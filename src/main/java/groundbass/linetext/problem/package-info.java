/** What can be wrong with a text, said with its place and its remedy. Decides nothing about when it is wrong. */
package groundbass.linetext.problem;
