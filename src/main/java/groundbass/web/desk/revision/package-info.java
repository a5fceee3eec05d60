/** The states of a lesson that are kept: listed, compared, gone on from. Changes nothing but what is being typed. */
package groundbass.web.desk.revision;
