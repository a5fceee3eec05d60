/** Files of releases to take home or to play, each taking recorded. Knows no page. */
package groundbass.web.student.file;
