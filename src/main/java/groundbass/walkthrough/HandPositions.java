package groundbass.walkthrough;

import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where on the neck the fretting hand lies, bar by bar, told where it has moved. */
final class HandPositions {
    /** A hand covers as many frets as it has fingers to stop them with (common practice, no source). */
    private static final int COVERED = 4;

    private final List<Optional<Frets>> told = new ArrayList<>();

    /** The frets that are stopped, the last included. */
    private record Frets(int lowest, int highest) {
        Frets with(Frets other) {
            return new Frets(Math.min(lowest, other.lowest), Math.max(highest, other.highest));
        }

        boolean isCovered() {
            return highest - lowest < COVERED;
        }
    }

    /** Bars that one position of the hand covers have it told at the first of them; a bar told by another has that one's. */
    HandPositions(Line line, EarlierBars earlier) {
        int first = 0;
        Optional<Frets> position = Optional.empty();
        for (int i = 0; i < line.bars().size(); i++) {
            told.add(Optional.empty());
            var here = frets(line.bars().get(i));
            if (earlier.of(i).isPresent()) {
                position = Optional.empty();
            } else if (here.isPresent()) {
                var together = position.map(here.get()::with).filter(Frets::isCovered);
                first = together.isPresent() ? first : i;
                position = together.or(() -> here);
                told.set(first, position);
            }
        }
    }

    /** A sentence about the bar of this index, where the hand comes to lie elsewhere and stays there for a bar. */
    Optional<String> in(int bar, Wording words) {
        return told.get(bar)
                .filter(frets -> frets.isCovered() && frets.lowest() < frets.highest())
                .map(frets -> words.say("hand.frets", String.valueOf(frets.lowest()), String.valueOf(frets.highest())));
    }

    /** A harmonic is touched, not stopped, and an open string leaves the hand where it is. */
    private static Optional<Frets> frets(Bar bar) {
        var stopped = bar.notes().stream()
                .filter(note -> note.ornaments().harmonic().isEmpty())
                .map(Note::place)
                .filter(Fretted.class::isInstance)
                .mapToInt(place -> ((Fretted) place).fret())
                .filter(fret -> fret > 0)
                .summaryStatistics();
        return stopped.getCount() == 0 ? Optional.empty() : Optional.of(new Frets(stopped.getMin(), stopped.getMax()));
    }
}
