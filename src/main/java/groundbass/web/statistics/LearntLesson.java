package groundbass.web.statistics;

import groundbass.document.Level;
import java.util.List;

/**
 * What became of one lesson until an age that it has reached.
 *
 * @param techniques in the reader's words
 * @param students who took something of it
 * @param plays, whole, looped visitors who played it, played all of it, and repeated a passage
 */
record LearntLesson(
        Level level, List<String> techniques, long views, long students, long plays, long whole, long looped) {
    LearntLesson {
        techniques = List.copyOf(techniques);
    }
}
