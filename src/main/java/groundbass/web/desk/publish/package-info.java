/** The room in which a lesson goes out, and its revisions. Decides nothing about dates. */
package groundbass.web.desk.publish;
