package groundbass.groove;

import groundbass.performance.Performance;
import groundbass.performance.SwungTime;
import groundbass.performance.TimedBar;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Plays a groove under a performance, swung as the line is. Drums rest in a pickup; a bar of another meter gets a groove
 * of that meter, a bar cut short what fits into it. Where sections meet, {@link Fills} leads over.
 */
final class Drums {
    private static final Comparator<DrumHit> ORDER =
            Comparator.comparing(DrumHit::at).thenComparing(DrumHit::piece);

    private final Performance performance;
    private final Groove groove;
    private final List<Written> written = new ArrayList<>();
    private final List<Fills.Played> played = new ArrayList<>();
    private int barInPattern;

    /** A stroke before swing. */
    record Written(Piece piece, Stroke stroke, Fraction at, DrummersTouch touch) {}

    private Drums(Performance performance, Groove groove) {
        this.performance = performance;
        this.groove = groove;
    }

    /** @return by moment, then in the order of the pieces */
    public static List<DrumHit> of(Performance performance, Groove groove) {
        var drums = new Drums(performance, groove);
        performance.bars().stream().filter(bar -> !bar.bar().isPickup()).forEach(drums::play);
        if (groove.feel() != Groove.MACHINE) {
            Fills.into(drums.written, drums.played);
        }
        return drums.swung();
    }

    private void play(TimedBar bar) {
        boolean fits = groove.meter().length().equals(bar.inForce().meter().length());
        var playing = fits ? groove : GrooveLibrary.ofMeter(bar.inForce().meter());
        if (bar.bar().changes().section().isPresent() || !fits) {
            barInPattern = 0;
        }
        for (var piece : playing.rows().keySet()) {
            play(playing, piece, bar);
        }
        played.add(new Fills.Played(bar, playing.column()));
        barInPattern = (barInPattern + 1) % playing.bars();
    }

    private void play(Groove playing, Piece piece, TimedBar bar) {
        for (int column = 0; column < playing.columns(); column++) {
            var stroke = playing.stroke(piece, barInPattern % playing.bars(), column);
            var at = playing.column().times(column);
            if (stroke != Stroke.NONE && at.isBefore(bar.bar().to())) {
                var touch = DrummersTouch.of(piece, barInPattern, column, groove.feel());
                written.add(new Written(piece, stroke, bar.moment(at), touch));
            }
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
