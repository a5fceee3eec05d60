package groundbass.catalog;

import java.util.List;
import java.util.Objects;

/**
 * Everything an episode says, in one value: what is being typed (in a draft) and what was fixed (in a revision). It
 * holds typed text as typed, right or wrong; {@link DocumentCheck} tells what is wrong. {@link DocumentJson} reads and
 * writes it.
 *
 * @param form             the version of this form; see {@link #FORM}
 * @param title            one line
 * @param summary          one or two sentences for lists and feeds
 * @param notes            Markdown
 * @param mainLine         the line that the lesson is about
 * @param exercises        further lines, in order
 * @param walkthroughEdits where the educator's words replace the program's
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
                DocumentSettings.USUAL);
    }

    public EpisodeDocument withTitle(String changed) {
        return new EpisodeDocument(
                form,
                changed,
                level,
                summary,
                notes,
                mainLine,
                exercises,
                backingTracks,
                groove,
                rights,
                walkthroughEdits,
                settings);
    }

    public EpisodeDocument withNotes(String changed) {
        return new EpisodeDocument(
                form,
                title,
                level,
                summary,
                changed,
                mainLine,
                exercises,
                backingTracks,
                groove,
                rights,
                walkthroughEdits,
                settings);
    }

    public EpisodeDocument withLines(LineSource main, List<LineSource> others) {
        return new EpisodeDocument(
                form,
                title,
                level,
                summary,
                notes,
                main,
                others,
                backingTracks,
                groove,
                rights,
                walkthroughEdits,
                settings);
    }

    public EpisodeDocument withBackingTracks(List<BackingTrack> changed) {
        return new EpisodeDocument(
                form,
                title,
                level,
                summary,
                notes,
                mainLine,
                exercises,
                changed,
                groove,
                rights,
                walkthroughEdits,
                settings);
    }

    public EpisodeDocument withRights(Rights changed) {
        return new EpisodeDocument(
                form,
                title,
                level,
                summary,
                notes,
                mainLine,
                exercises,
                backingTracks,
                groove,
                changed,
                walkthroughEdits,
                settings);
    }
}
