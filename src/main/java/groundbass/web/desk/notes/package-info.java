/** The room of the notes for students. Knows nothing of how they are rendered. */
package groundbass.web.desk.notes;
