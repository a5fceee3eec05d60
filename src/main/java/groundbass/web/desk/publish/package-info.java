/** The room in which a lesson goes out. Decides nothing about dates. */
package groundbass.web.desk.publish;
