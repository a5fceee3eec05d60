/**
 * What the educator keeps: series, episodes, drafts, revisions, uploads, settings, and who changed what. Holds lines
 * as the text that was typed; knows nothing of notes, of students, of files made from a revision, or of pages.
 */
package groundbass.catalog;
