/** The educator's side of the site: writing, publishing, settings. Knows no SQL and no page of the students'. */
package groundbass.web.desk;
