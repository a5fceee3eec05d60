package groundbass.archive;

import groundbass.identity.Sha256;
import java.util.Map;

/**
 * A lesson as it stood at one moment, ready to be written.
 *
 * @param folder where it goes
 * @param texts its files of text, in their order
 * @param stored its stored files, by where they go
 */
record LessonContent(String folder, LessonPart part, Map<String, String> texts, Map<String, Sha256> stored) {}
