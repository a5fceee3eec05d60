/**
 * What is heard in a recording: how loud it is, when something sets in, where the bars of a line lie. Knows nothing
 * of files or of how sound is made.
 */
package groundbass.listening;
