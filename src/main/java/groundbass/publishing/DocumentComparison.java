package groundbass.publishing;

import groundbass.comparison.ComparisonWords;
import groundbass.comparison.LineComparison;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/** Says in what two states of a lesson differ for its readers: lines bar by bar, everything else by its name. */
public final class DocumentComparison {
    private static final int MOST_PLACES = 6;

    /** What readers have beside the lines. The script and how far the rights are settled stay on the desk. */
    private static final List<Map.Entry<String, Function<EpisodeDocument, Object>>> PARTS = List.of(
            Map.entry("publishing.part.title", EpisodeDocument::title),
            Map.entry("publishing.part.level", EpisodeDocument::level),
            Map.entry("publishing.part.summary", EpisodeDocument::summary),
            Map.entry("publishing.part.notes", EpisodeDocument::notes),
            Map.entry("publishing.part.recordings", EpisodeDocument::backingTracks),
            Map.entry("publishing.part.groove", EpisodeDocument::groove),
            Map.entry(
                    "publishing.part.rights",
                    document -> List.of(
                            document.rights().composer(),
                            document.rights().credit(),
                            document.rights().statement())),
            Map.entry("publishing.part.walkthrough", EpisodeDocument::walkthroughEdits),
            Map.entry("publishing.part.facts", EpisodeDocument::facts),
            Map.entry("publishing.part.settings", EpisodeDocument::settings));

    /** What readers never see. */
    private static final List<Map.Entry<String, Function<EpisodeDocument, Object>>> DESK_ALONE = List.of(
            Map.entry("publishing.part.script", EpisodeDocument::script),
            Map.entry(
                    "publishing.part.clearance",
                    document -> List.of(
                            document.rights().clearance(), document.rights().licence())));

    private DocumentComparison() {}

    /** A clause for each; none where readers would see no difference. */
    static List<Message> clauses(EpisodeDocument before, EpisodeDocument after) {
        var clauses = new ArrayList<Message>(lines(before.mainLine(), after.mainLine()));
        clauses.addAll(exercises(before.exercises(), after.exercises()));
        clauses.addAll(parts(PARTS, before, after));
        return List.copyOf(clauses);
    }

    /** The same with what only the desk has: a clause for each; none where the two say the same. */
    public static List<Message> onTheDesk(EpisodeDocument before, EpisodeDocument after) {
        return Stream.of(clauses(before, after), parts(DESK_ALONE, before, after))
                .flatMap(List::stream)
                .toList();
    }

    /** What differs beside the lines, for one who shows these bar by bar. */
    public static List<Message> besideTheLines(EpisodeDocument before, EpisodeDocument after) {
        return Stream.of(parts(PARTS, before, after), parts(DESK_ALONE, before, after))
                .flatMap(List::stream)
                .toList();
    }

    private static List<Message> parts(
            List<Map.Entry<String, Function<EpisodeDocument, Object>>> parts,
            EpisodeDocument before,
            EpisodeDocument after) {
        return parts.stream()
                .filter(part ->
                        !part.getValue().apply(before).equals(part.getValue().apply(after)))
                .map(part -> Message.of(part.getKey()))
                .toList();
    }

    /** What was typed otherwise and comes to the same line is no difference. */
    private static List<Message> lines(LineSource before, LineSource after) {
        return before.text().equals(after.text())
                ? List.of()
                : ComparisonWords.of(LineComparison.of(line(before), line(after)), MOST_PLACES);
    }

    private static Line line(LineSource source) {
        return LineText.read(source.text()).line();
    }

    private static List<Message> exercises(List<LineSource> before, List<LineSource> after) {
        if (before.size() != after.size()) {
            return List.of(Message.of("publishing.part.exercises"));
        }
        var clauses = new ArrayList<Message>();
        for (int i = 0; i < before.size(); i++) {
            int number = i + 1;
            lines(before.get(i), after.get(i))
                    .forEach(clause -> clauses.add(Message.of("publishing.part.exercise", number, clause)));
        }
        return clauses;
    }
}
