/**
 * A file of another program read as a line, with what was guessed and what a line cannot hold. Knows no page and no
 * command; changes nothing that is there already.
 */
package groundbass.intake;
