/** News of a series by e-mail: asking for it, agreeing by the link of a letter, ending it. */
package groundbass.web.student.news;
