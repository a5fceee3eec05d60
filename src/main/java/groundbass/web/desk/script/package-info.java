/** What is said in a lesson, proofread, and the chapters of its video. Knows nothing of how a script is read. */
package groundbass.web.desk.script;
