/**
 * What is out, to be found by facts of the line and by words. Reads releases and what they were made of; knows no page and
 * no reader.
 */
package groundbass.release.find;
