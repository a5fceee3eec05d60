/**
 * Lessons before they are out, for their educator and for whom they give a private link. Records nothing and keeps
 * nothing.
 */
package groundbass.web.student.preview;
