/** Pages that belong to no lesson: the front page, privacy, cautions, health. Knows no series from inside. */
package groundbass.web.general;
