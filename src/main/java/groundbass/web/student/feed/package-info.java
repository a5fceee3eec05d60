/** What programs read of the lessons that are out: feeds, a calendar of what comes, a map of the site. */
package groundbass.web.student.feed;
