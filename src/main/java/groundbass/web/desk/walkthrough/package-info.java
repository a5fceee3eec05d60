/** The walkthrough reworded, and the prompter. Tells no step of its own. */
package groundbass.web.desk.walkthrough;
