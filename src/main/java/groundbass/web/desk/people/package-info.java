/** Who else is at the desk: colleagues of a series, the people of the site, invitations. Knows no lesson. */
package groundbass.web.desk.people;
