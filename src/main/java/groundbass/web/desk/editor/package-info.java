/** The page on which an episode is written, with all that its buttons do. Decides nothing about music or dates. */
package groundbass.web.desk.editor;
