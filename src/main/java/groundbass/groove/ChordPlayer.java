package groundbass.groove;

import groundbass.performance.Origin;
import groundbass.performance.Performance;
import groundbass.performance.SwungTime;
import groundbass.performance.TimedBar;
import groundbass.performance.TimedChord;
import groundbass.performance.When;
import groundbass.score.Fraction;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Plays the chord symbols of a performance in the rhythm of its groove, swung as the line is; every round alike. What is
 * struck sounds until the next stroke, the next chord, the bar line, or until the hand leaves the keys. A chord that
 * comes inside a bar is struck where it comes, and one that the rhythm would pass over as well.
 */
final class ChordPlayer {
    private final Performance performance;
    private final List<Written> written = new ArrayList<>();

    /** A chord before swing. */
    private record Written(Voicing voicing, Fraction at, Fraction until, int velocity) {}

    /** Something that the hand does, counted from the bar's first count. */
    private record Event(Fraction at, ChordStroke stroke) {}

    /** The chord that is written here, for so long. */
    private record Span(Fraction from, Fraction to, Voicing voicing) {}

    private record Where(int bar, int pass, int round) {
        static Where of(TimedBar bar) {
            return new Where(bar.number(), bar.pass(), bar.round());
        }

        static Where of(Origin origin) {
            return new Where(origin.written().bar(), origin.pass(), origin.round());
        }
    }

    private ChordPlayer(Performance performance) {
        this.performance = performance;
    }

    public static List<VoicedChord> of(Performance performance, Groove groove) {
        var player = new ChordPlayer(performance);
        var patterns = new HashMap<Where, PatternBar>();
        PatternBar.of(performance, groove).forEach(bar -> patterns.put(Where.of(bar.bar()), bar));
        var spans = player.spans();
        performance.bars().forEach(bar -> spans.getOrDefault(Where.of(bar), List.of())
                .forEach(span -> player.play(bar, span, patterns.get(Where.of(bar)))));
        return player.swung();
    }

    private Map<Where, List<Span>> spans() {
        var voicings = voicings(performance.chords());
        var ends = new HashMap<Where, Fraction>();
        performance.bars().forEach(bar -> ends.put(Where.of(bar), bar.bar().to()));
        var chords = performance.chords();
        var spans = new HashMap<Where, List<Span>>();
        for (int i = 0; i < chords.size(); i++) {
            var here = Where.of(chords.get(i).origin());
            boolean last = i + 1 == chords.size()
                    || !Where.of(chords.get(i + 1).origin()).equals(here);
            var until =
                    last ? ends.get(here) : chords.get(i + 1).origin().written().at();
            var span = new Span(chords.get(i).origin().written().at(), until, voicings.get(once(chords.get(i))));
            spans.computeIfAbsent(here, any -> new ArrayList<>()).add(span);
        }
        return spans;
    }

    /** @param pattern none in a pickup, where each chord is held */
    private void play(TimedBar bar, Span span, PatternBar pattern) {
        if (span.voicing().midi().isEmpty()) {
            return;
        }
        var events = pattern == null ? new ArrayList<Event>() : events(span, pattern);
        if (events.stream().noneMatch(event -> event.stroke().strikes())
                || (span.from().isAfter(bar.bar().from()) && !events.get(0).at().equals(span.from()))) {
            events.add(0, new Event(span.from(), ChordStroke.NORMAL));
        }
        for (int i = 0; i < events.size(); i++) {
            var event = events.get(i);
            var until = i + 1 < events.size() ? events.get(i + 1).at() : span.to();
            if (event.stroke().strikes() && event.at().isBefore(until)) {
                written.add(new Written(
                        span.voicing(),
                        bar.moment(event.at()),
                        bar.moment(until),
                        event.stroke().velocity()));
            }
        }
    }

    private static List<Event> events(Span span, PatternBar pattern) {
        var events = new ArrayList<Event>();
        for (int column = 0; column < pattern.groove().columns(); column++) {
            var at = pattern.offset(column);
            var stroke = pattern.groove().chords(pattern.index(), column);
            if (stroke != ChordStroke.HOLD && !at.isBefore(span.from()) && at.isBefore(span.to())) {
                events.add(new Event(at, stroke));
            }
        }
        return events;
    }

    private List<VoicedChord> swung() {
        var swung = new SwungTime(
                performance.bars(),
                written.stream()
                        .flatMap(chord -> Stream.of(chord.at(), chord.until()))
                        .toList());
        return written.stream()
                .map(chord -> new VoicedChord(
                        chord.voicing(), when(swung.of(chord.at()), swung.of(chord.until())), chord.velocity()))
                .toList();
    }

    private When when(Fraction at, Fraction until) {
        return new When(at, until, performance.seconds(at), performance.seconds(until));
    }

    /** By the first playing of each chord on each pass. */
    private static Map<Origin, Voicing> voicings(List<TimedChord> chords) {
        var first = new HashMap<Origin, TimedChord>();
        var progression = chords.stream()
                .filter(chord -> first.putIfAbsent(once(chord), chord) == null)
                .toList();
        List<ChordSymbol> symbols = progression.stream().map(TimedChord::chord).toList();
        var led = VoiceLeading.of(symbols);
        var voicings = new HashMap<Origin, Voicing>();
        for (int i = 0; i < progression.size(); i++) {
            voicings.put(once(progression.get(i)), led.get(i));
        }
        return voicings;
    }

    private static Origin once(TimedChord chord) {
        return new Origin(chord.origin().written(), chord.origin().pass(), 1);
    }
}
