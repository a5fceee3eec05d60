/** Timed captions read, and the script that they make. Knows nothing of what is said in them. */
package groundbass.script.captions;
