/**
 * The files of an archive, wherever they lie: in a folder, in a zip, in what is left of a broken one. Names are looked up
 * and never become paths; sizes, numbers and digests are asked of every file that is read.
 */
package groundbass.archive.file;
