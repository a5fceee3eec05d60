package groundbass.groove;

import groundbass.performance.Performance;
import groundbass.performance.SwungTime;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Plays a groove under a performance, swung as the line is. Drums rest in a pickup; a bar of another meter gets a groove
 * of that meter ({@link PatternBar}), a bar cut short what fits into it. Where sections meet, {@link Fills} leads over.
 */
final class Drums {
    private static final Comparator<DrumHit> ORDER =
            Comparator.comparing(DrumHit::at).thenComparing(DrumHit::piece);

    private final Performance performance;
    private final KickCue cue;
    private final List<Written> written = new ArrayList<>();

    /** A stroke before swing. */
    record Written(Piece piece, Stroke stroke, Fraction at, DrummersTouch touch) {}

    private Drums(Performance performance) {
        this.performance = performance;
        this.cue = new KickCue(performance);
    }

    /** @return by moment, then in the order of the pieces */
    public static List<DrumHit> of(Performance performance, Groove groove) {
        var drums = new Drums(performance);
        var bars = PatternBar.of(performance, groove);
        bars.forEach(drums::play);
        if (groove.feel() != Groove.MACHINE) {
            Fills.into(drums.written, bars);
        }
        return drums.swung();
    }

    private void play(PatternBar bar) {
        for (var piece : bar.groove().rows().keySet()) {
            strokes(bar, piece).forEach((column, stroke) -> play(bar, piece, column, stroke));
        }
    }

    private Map<Integer, Stroke> strokes(PatternBar bar, Piece piece) {
        if (piece == Piece.KICK) {
            return cue.of(bar);
        }
        var strokes = new TreeMap<Integer, Stroke>();
        for (int column = 0; column < bar.groove().columns(); column++) {
            strokes.put(column, bar.stroke(piece, column));
        }
        return strokes;
    }

    private void play(PatternBar bar, Piece piece, int column, Stroke stroke) {
        if (stroke != Stroke.NONE && bar.has(column)) {
            var touch = DrummersTouch.of(piece, bar.index(), column, bar.groove());
            written.add(new Written(piece, stroke, bar.bar().moment(bar.offset(column)), touch));
        }
    }

    private List<DrumHit> swung() {
        var swung = new SwungTime(
                performance.bars(), written.stream().map(Written::at).toList());
        return written.stream()
                .map(hit -> hit(hit, swung.of(hit.at())))
                .sorted(ORDER)
                .toList();
    }

    private DrumHit hit(Written hit, Fraction at) {
        double seconds = performance.seconds(at) + hit.touch().late();
        return new DrumHit(hit.piece(), hit.stroke(), at, seconds, hit.touch().force());
    }
}
