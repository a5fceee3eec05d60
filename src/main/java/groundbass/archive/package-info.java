/**
 * One series in a folder or zip that people can read, and back: nobody is locked in. A lesson is written as files of text
 * under the names that the demonstration uses; whatever comes in is looked up by name, never made a path, and is believed
 * only as far as its digest. What the files are is told in {@code docs/archives.md}. Knows nothing of pages and students.
 */
package groundbass.archive;
