/** The rooms in which lines are written: the main one and the exercises. Decides nothing about music. */
package groundbass.web.desk.editor;
