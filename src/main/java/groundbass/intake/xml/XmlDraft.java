package groundbass.intake.xml;

import groundbass.intake.draft.DraftNote;
import groundbass.intake.draft.KeyGuess;
import groundbass.intake.draft.NeckGuess;
import groundbass.intake.draft.RoughLine;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.notice.Unreadable;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Meter;
import groundbass.score.Passes;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** A part as it was read, made into a draft. */
final class XmlDraft {
    private final PartReader part;
    private final NoticeList notices;

    private XmlDraft(PartReader part, NoticeList notices) {
        this.part = part;
        this.notices = notices;
    }

    static RoughLine of(PartReader part, NoticeList notices) throws Unreadable {
        if (part.state().bars().isEmpty()) {
            throw new Unreadable(Message.of("intake.refused.empty"));
        }
        return new XmlDraft(part, notices).draft();
    }

    private RoughLine draft() {
        var raw = part.state().bars();
        part.closeBrackets();
        DirectionsInFile.complete(raw);
        var header = part.titles().in(part.state().header());
        var bars = bars(header.meter(), raw);
        var paired = StaffPairing.of(part.notes(), part.tablatures(), notices);
        var plain = GraceJoining.of(paired, notices);
        var notes = TieJoining.of(inside(plain, raw), seams(bars, raw), notices);
        var withNeck = neck(header, notes);
        var placing = new NotePlacing(withNeck, part.neck().capo(), notices);
        var placed = notes.stream().map(placing::of).toList();
        tellOfChordsOfOne(notes);
        return new RoughLine(guessed(withNeck, notes, placed), bars, placed);
    }

    /** What is said of a chord at a note that begins alone. */
    private void tellOfChordsOfOne(List<RawNote> notes) {
        var together = notes.stream().collect(Collectors.groupingBy(note -> note.start, Collectors.counting()));
        notes.stream()
                .filter(note -> note.ornaments.spread().isPresent() && together.get(note.start) == 1)
                .forEach(note -> notices.leftOut(note.bar, Message.of("intake.left.arpeggio")));
    }

    private static List<Bar> bars(Meter first, List<RawMeasure> raw) {
        var meter = first;
        var bars = new ArrayList<Bar>();
        for (var bar : raw) {
            meter = bar.changes.meter().orElse(meter);
            bars.add(bar.bar(bar.to.minus(meter.count().dividedBy(4)).max(bar.from)));
        }
        return bars;
    }

    /** A bar that no line has so long is cut. */
    private List<RawNote> inside(List<RawNote> notes, List<RawMeasure> bars) {
        return notes.stream()
                .filter(note -> {
                    boolean in = note.start.isBefore(bars.get(note.bar).end());
                    if (!in) {
                        notices.leftOut(note.bar, Message.of("intake.left.beyond"));
                    }
                    return in;
                })
                .toList();
    }

    private static Set<Fraction> seams(List<Bar> bars, List<RawMeasure> raw) {
        var seams = new HashSet<Fraction>();
        IntStream.range(0, bars.size())
                .filter(i -> Passes.isSeam(bars, i))
                .forEach(i -> seams.add(raw.get(i).end()));
        return seams;
    }

    private Header neck(Header header, List<RawNote> notes) {
        int frets = notes.stream()
                .flatMap(note ->
                        Stream.concat(Stream.of(note.fret), note.from.stream().map(from -> from.fret)))
                .mapToInt(fret -> fret.orElse(0))
                .max()
                .orElse(0);
        var withFrets = header.withFrets(Math.max(Header.USUAL_FRETS, frets));
        if (part.neck().tuning().isPresent()) {
            return withFrets.with(part.neck().tuning().get());
        }
        int strings = notes.stream()
                .map(note -> note.string)
                .filter(OptionalInt::isPresent)
                .mapToInt(OptionalInt::getAsInt)
                .max()
                .orElse(1);
        var pitches =
                notes.stream().filter(note -> !note.dead).map(note -> note.midi).toList();
        var tuning = NeckGuess.of(pitches, withFrets.frets(), strings);
        notices.guessed(Message.of("intake.guessed.neck", tuning.size()));
        return withFrets.with(tuning);
    }

    /** What a line says in any case, and this file does not. */
    private Header guessed(Header header, List<RawNote> raw, List<DraftNote> notes) {
        if (!part.state().isTempoSaid()) {
            notices.guessed(Message.of("intake.guessed.tempo", header.tempo().perMinute()));
        }
        if (!part.state().isMeterSaid()) {
            notices.guessed(Message.of("intake.guessed.meter", header.meter().toString()));
        }
        if (!raw.isEmpty() && raw.stream().allMatch(note -> note.hand.isEmpty())) {
            notices.guessed(Message.of("intake.guessed.hand"));
        }
        if (part.state().isModeSaid()) {
            return header;
        }
        var key = KeyGuess.of(notes, header.key().fifths());
        notices.guessed(Message.of("intake.guessed.key", key.toString()));
        return header.with(key);
    }
}
