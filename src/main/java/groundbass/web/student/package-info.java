/**
 * The student's side: series, lessons, files to take home, signing in by a mailed link. Shows only what is published;
 * knows nothing of drafts, of the desk or of how a release is made.
 */
package groundbass.web.student;
