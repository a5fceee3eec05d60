/** Asks before a recording or picture is taken out of its lesson, and puts it back. Knows nothing of how rows go. */
package groundbass.web.desk.takeout;
