/** The pages of the desk that belong to no single episode: series, letters, settings, mail. Knows no draft. */
package groundbass.web.desk.site;
