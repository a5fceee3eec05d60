/** An educator's own recordings, and the bars in them. Knows nothing of how bars are found. */
package groundbass.web.desk.recording;
