package groundbass.release.play;

import groundbass.groove.Band;
import groundbass.groove.Click;
import groundbass.performance.Performance;
import groundbass.performance.SwungTime;
import groundbass.performance.TimedBar;
import groundbass.release.play.PlayManifest.At;
import groundbass.release.play.PlayManifest.Bar;
import groundbass.release.play.PlayManifest.Beat;
import groundbass.release.play.PlayManifest.Event;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.signal.SampleRate;
import groundbass.writing.Element;
import groundbass.writing.Writing;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** When everything of a performance comes, in frames. */
final class PlayTimes {
    private static final int QUARTERS = 4;

    private final SampleRate rate;
    private final Performance performance;
    private final WrittenLine written;
    private final SwungTime swung;

    PlayTimes(SampleRate rate, Performance performance) {
        this.rate = rate;
        this.performance = performance;
        this.written = Writing.of(performance.line());
        this.swung = SwungTime.ofNotes(performance.bars());
    }

    List<Bar> bars() {
        return performance.bars().stream().map(this::bar).toList();
    }

    static List<Beat> countIn(SampleRate rate, Band band) {
        return band.clicks().stream()
                .filter(Click::countIn)
                .map(click -> new Beat(rate.at(click.seconds()), click.first()))
                .toList();
    }

    long frame(Fraction moment) {
        return rate.at(performance.seconds(moment));
    }

    private Bar bar(TimedBar bar) {
        long start = frame(bar.start());
        return new Bar(bar.number(), bar.pass(), start, frame(bar.end()) - start, counts(bar), events(bar));
    }

    private List<At> counts(TimedBar bar) {
        var meter = bar.inForce().meter();
        return IntStream.range(0, meter.counts() * QUARTERS)
                .mapToObj(i -> new Count(i / QUARTERS + 1, i % QUARTERS))
                .filter(count -> isInside(bar, count.offset(meter)))
                .map(count -> at(bar, count, count.offset(meter)))
                .toList();
    }

    private static boolean isInside(TimedBar bar, Fraction offset) {
        return !offset.isBefore(bar.bar().from()) && offset.isBefore(bar.bar().to());
    }

    private At at(TimedBar bar, Count count, Fraction offset) {
        return new At(count.toString(), PlayManifest.text(offset), soundsAt(bar, offset));
    }

    private List<Event> events(TimedBar bar) {
        return elements(bar)
                .filter(Element.Chord.class::isInstance)
                .map(element -> event(bar, element))
                .distinct()
                .toList();
    }

    private Stream<Element> elements(TimedBar bar) {
        WrittenBar here = written.bars().get(bar.number() - performance.line().firstNumber());
        return here.voices().stream().flatMap(voice -> voice.elements().stream());
    }

    private Event event(TimedBar bar, Element element) {
        var end = element.onset().plus(element.length());
        return new Event(
                bar.number(),
                PlayManifest.text(element.onset()),
                bar.number(),
                PlayManifest.text(end),
                soundsAt(bar, element.onset()),
                soundsAt(bar, end));
    }

    private long soundsAt(TimedBar bar, Fraction offset) {
        return frame(swung.of(bar.moment(offset)));
    }
}
