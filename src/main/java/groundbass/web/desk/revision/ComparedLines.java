package groundbass.web.desk.revision;

import groundbass.comparison.Change;
import groundbass.comparison.ComparisonWords;
import groundbass.comparison.LineComparison;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.lesson.Sheets;
import groundbass.lesson.Sheets.DrawnSystem;
import groundbass.linetext.LineText;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.text.Message;
import groundbass.web.desk.line.SheetRoom;
import groundbass.web.desk.revision.ComparedLine.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Puts the lines of two states of a lesson beside each other, with pictures of the first bars that differ. */
final class ComparedLines {
    private static final Logger log = LoggerFactory.getLogger(ComparedLines.class);

    private static final int MOST_DRAWN = 16;

    /** In staff spaces: half of a desk's page. */
    private static final double WIDTH = 52;

    private final Sheets sheets;
    private final SheetRoom room = new SheetRoom();
    private int drawn;

    ComparedLines(Sheets sheets) {
        this.sheets = sheets;
    }

    /** Those that differ: the main one, then exercises by their places. */
    List<ComparedLine> of(EpisodeDocument before, EpisodeDocument after) {
        var lines = new ArrayList<ComparedLine>();
        compare(Message.of("desk.editor.line"), before.mainLine(), after.mainLine())
                .ifPresent(lines::add);
        int most = Math.max(before.exercises().size(), after.exercises().size());
        for (int i = 0; i < most; i++) {
            compare(Message.of("desk.exercise.of", i + 1), exercise(before, i), exercise(after, i))
                    .ifPresent(lines::add);
        }
        return lines;
    }

    private static LineSource exercise(EpisodeDocument document, int place) {
        return place < document.exercises().size() ? document.exercises().get(place) : LineSource.EMPTY;
    }

    private Optional<ComparedLine> compare(Message name, LineSource before, LineSource after) {
        if (before.text().equals(after.text())) {
            return Optional.empty();
        }
        if (before.isBlank() || after.isBlank()) {
            var clause = Message.of(before.isBlank() ? "desk.revision.line.new" : "desk.revision.line.gone");
            return Optional.of(new ComparedLine(name, List.of(Place.of(clause))));
        }
        var places = places(
                LineText.read(before.text()).line(), LineText.read(after.text()).line());
        return Optional.of(new ComparedLine(name, places))
                .filter(line -> !line.places().isEmpty());
    }

    private List<Place> places(Line before, Line after) {
        var comparison = LineComparison.of(before, after);
        var places = new ArrayList<Place>();
        if (comparison.head()) {
            places.add(Place.of(ComparisonWords.HEAD));
        }
        comparison.changes().forEach(change -> places.add(place(change, before, after)));
        return places;
    }

    private Place place(Change change, Line before, Line after) {
        var clause = ComparisonWords.clause(change);
        if (drawn++ >= MOST_DRAWN) {
            return Place.of(clause);
        }
        return new Place(
                clause,
                change.earlier().flatMap(bars -> draw(before, bars, "earlier-")),
                change.later().flatMap(bars -> draw(after, bars, "later-")));
    }

    private Optional<String> draw(Line line, Change.Bars bars, String prefix) {
        return Extract.bars(line, bars.first(), bars.last())
                .filter(room::takes)
                .flatMap(part -> draw(part, prefix + drawn + "-"));
    }

    /** A fault in drawing must not keep an educator from their own text, so it ends here and goes into the log. */
    private Optional<String> draw(Line part, String prefix) {
        try {
            return Optional.of(sheets.systems(part, WIDTH, prefix).stream()
                    .map(DrawnSystem::svg)
                    .collect(Collectors.joining()));
        } catch (RuntimeException e) {
            log.error("bars to be compared could not be drawn", e);
            return Optional.empty();
        }
    }
}
