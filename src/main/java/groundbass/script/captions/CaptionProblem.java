package groundbass.script.captions;

import groundbass.text.Message;

/**
 * Something in a caption file that could not be read; the rest still is.
 *
 * @param line from 1
 */
public record CaptionProblem(int line, Message message) {}
