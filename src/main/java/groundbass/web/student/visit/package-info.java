/** Who comes to a lesson's page, and whether they are counted. Shows nothing. */
package groundbass.web.student.visit;
