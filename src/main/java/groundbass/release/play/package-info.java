/**
 * What the page plays along with: stems cut at bar lines, and the manifest that says where in time and in which file
 * each bar lies. Knows nothing of databases and addresses.
 */
package groundbass.release.play;
