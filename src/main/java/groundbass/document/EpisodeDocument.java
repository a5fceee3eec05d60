package groundbass.document;

import java.util.List;
import java.util.Objects;

/**
 * Everything an episode says, in one value: what is being typed (in a draft) and what was fixed (in a revision). It
 * holds typed text as typed, right or wrong; {@code DocumentCheck} tells what is wrong. {@code DocumentJson} reads and
 * writes it.
 *
 * @param form             the version of this form; see {@link #FORM}
 * @param title            one line
 * @param summary          one or two sentences for lists and feeds
 * @param notes            Markdown
 * @param mainLine         the line that the lesson is about
 * @param exercises        further lines, in order
 * @param walkthroughEdits where the educator's words replace the program's
 * @param script           what is said in the lesson, as text or as timed captions; kept on the desk, never published
 * @param facts            what else a student is told: video, gear, where to go on
 */
public record EpisodeDocument(
        int form,
        String title,
        Level level,
        String summary,
        String notes,
        LineSource mainLine,
        List<LineSource> exercises,
        List<BackingTrack> backingTracks,
        GrooveSource groove,
        Rights rights,
        List<WalkthroughEdit> walkthroughEdits,
        String script,
        LessonFacts facts,
        DocumentSettings settings) {
    /** The form that this program writes. It grows by one when an older program could misread a document. */
    public static final int FORM = 1;

    public EpisodeDocument {
        Objects.requireNonNull(title);
        Objects.requireNonNull(level);
        Objects.requireNonNull(summary);
        Objects.requireNonNull(notes);
        Objects.requireNonNull(mainLine);
        exercises = List.copyOf(exercises);
        backingTracks = List.copyOf(backingTracks);
        Objects.requireNonNull(groove);
        Objects.requireNonNull(rights);
        walkthroughEdits = List.copyOf(walkthroughEdits);
        Objects.requireNonNull(script);
        Objects.requireNonNull(facts);
        Objects.requireNonNull(settings);
    }

    /** A document that says no more than its title and level. */
    public static EpisodeDocument titled(String title, Level level) {
        return new EpisodeDocument(
                FORM,
                title,
                level,
                "",
                "",
                LineSource.EMPTY,
                List.of(),
                List.of(),
                GrooveSource.CHOSEN_BY_METER,
                Rights.EMPTY,
                List.of(),
                "",
                LessonFacts.NONE,
                DocumentSettings.USUAL);
    }

    /** The way to a document that differs from this one in some parts. */
    public DocumentEdit edit() {
        return new DocumentEdit(this);
    }
}
