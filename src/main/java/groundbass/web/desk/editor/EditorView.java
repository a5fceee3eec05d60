package groundbass.web.desk.editor;

import groundbass.document.BackingTrack;
import groundbass.document.Clearance;
import groundbass.document.Level;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.web.desk.calendar.PreflightView;
import groundbass.web.desk.calendar.ReleaseCalendar;
import groundbass.web.desk.recording.TrackRow;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.LanguageRow;
import groundbass.web.view.Zones;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What the page of an episode shows.
 *
 * @param path where the form goes
 * @param about what is known of the episode; empty where nobody is signed in, who then sees what they typed and no more
 * @param email what was typed as the address to sign in with
 * @param others what another window saved in the meantime, where that differs from what was typed here
 */
public record EditorView(
        String path,
        EpisodeForm form,
        FieldProblems problems,
        Preview preview,
        Optional<About> about,
        List<TrackRow> tracks,
        List<Difference> others,
        String email) {
    private static final String LINE_EXAMPLE = """
            key     A dorian
            meter   4/4
            tempo   96
            strings E A D G
            style   finger

            bar 1 over Am7
            1    E5
            1&   E5, E8
            2    A5, Ax
            2&   A7 short
            3    E8 for 2 slap, D5 pop
            4    rest

            bar 2 = bar 1 counts 1-2
            3-4  D4+G5 pluck
            repeat end x2
            """;

    /** The episode beside its text. */
    public record About(
            String series,
            int number,
            boolean out,
            Optional<Instant> savedAt,
            ReleaseCalendar calendar,
            PreflightView preflight) {}

    /**
     * A field that another window saved otherwise.
     *
     * @param field the id of the field in the page; empty where it is not one field
     * @param label a key of the bundle
     */
    public record Difference(String field, String label, String stored) {}

    public List<Level> levels() {
        return List.of(Level.values());
    }

    public List<BackingTrack.Kind> kinds() {
        return List.of(BackingTrack.Kind.values());
    }

    public List<Clearance> clearances() {
        return List.of(Clearance.values());
    }

    public List<String> grooves() {
        return GrooveLibrary.all().stream().map(Groove::name).toList();
    }

    public List<String> zones() {
        return Zones.with(form.zone());
    }

    public List<LanguageRow> languages() {
        return LanguageRow.with(form.making().language());
    }

    public String lineExample() {
        return LINE_EXAMPLE;
    }

    public String grooveExample() {
        return GrooveText.print(GrooveLibrary.all().get(0));
    }

    /** The parts of the lesson; none where nobody is signed in. */
    public List<EditorPart> parts() {
        return about.map(known -> LessonParts.of(path, known.preflight())).orElseGet(List::of);
    }

    public boolean expired() {
        return about.isEmpty();
    }

    EditorView with(List<Difference> differences) {
        return new EditorView(path, form, problems, preview, about, tracks, differences, email);
    }
}
