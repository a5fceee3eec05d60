package groundbass.publishing.preflight;

import groundbass.text.Message;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Everything that is looked at before a lesson goes out, in the order in which it is told. There is no other list: the
 * rooms of a lesson, the room in which it is published, the coming weeks, the pass at its hour and the page of all items
 * ask this one.
 */
public enum Checkpoint {
    /** Title, level, summary, language and gear. */
    DETAILS("title"),
    /** That every line can be read, and is there. */
    LINES("mainLine", "exercises"),
    /** What a teacher would remark on in what can be read: mended, or let stand. */
    FINDINGS("mainLine"),
    /** Drums, tempos and rounds of what is played. */
    SOUND("groove", "settings.tempos", "settings.rounds"),
    /** That recordings of one's own are marked with the bars that the line has. */
    RECORDINGS("tracks"),
    /** The notes, and that the line has what they show of it. */
    NOTES("notes"),
    /** That pictures in the notes have words. */
    PICTURES("notes"),
    /** That every address leads to somewhere. */
    LINKS("facts.video", "facts.courses"),
    /** That no word of the educator's for the walkthrough has lost its notes. */
    WALKTHROUGH("walkthrough"),
    /** Whose music it is, and that it may be published. */
    RIGHTS("rights"),
    /** That the cautions for hands and hearing stand in the language of the lesson. */
    CAUTIONS("settings.language"),
    /** That readers can know who teaches here. */
    TEACHER("imprint"),
    /** What is printed for good. */
    ADDRESS("address"),
    /** Whether the news of it will reach whoever agreed to it. */
    MAIL("mail"),
    /** Whether what is written is what is out, or waits for its hour. */
    RELEASE("release");

    private final List<String> fields;

    Checkpoint(String... fields) {
        this.fields = List.of(fields);
    }

    /** Which of them a field of a document belongs to, named as in {@link groundbass.catalog.episode.DocumentCheck}. */
    static Checkpoint of(String field) {
        return Stream.of(values())
                .filter(point -> point.holds(field))
                .findFirst()
                .orElse(DETAILS);
    }

    private boolean holds(String field) {
        return fields.stream()
                .anyMatch(own -> field.equals(own) || field.startsWith(own + ".") || field.startsWith(own + "["));
    }

    /** Where it is mended in general, named as {@link LessonRemark} names it. */
    public String field() {
        return fields.get(0);
    }

    /** In a word or two. */
    public Message title() {
        return Message.of("publishing.checkpoint." + word());
    }

    /** The end of its message keys. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
