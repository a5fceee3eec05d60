package groundbass.intake.smf;

import groundbass.intake.draft.DraftNote;
import groundbass.intake.draft.KeyGuess;
import groundbass.intake.draft.NeckGuess;
import groundbass.intake.draft.RoughLine;
import groundbass.intake.notice.NoticeList;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Repeats;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.text.Message;
import groundbass.theory.Key;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What was played as notes of bars. Mutable while it works; one for a part. */
final class SmfDraft {
    private final Smf file;
    private final GraceFinder graces;
    private final List<Smf.Note> notes;
    private final NoticeList notices;
    private final TreeSet<Long> struck = new TreeSet<>();
    private final List<TickBar> bars;
    private final BarIndex index;
    private final SignsByBar signs;

    /** @param instants what has no length */
    SmfDraft(Smf file, List<Smf.Note> played, List<Smf.Note> instants, NoticeList notices) {
        this.file = file;
        this.graces = GraceFinder.of(played, file.perQuarter());
        this.notes = graces.notes();
        this.notices = notices;
        notes.forEach(note -> struck.add(note.on()));
        this.bars = withoutSilence(laid());
        this.index = new BarIndex(bars);
        this.signs = new SignsByBar(file, bars, index, notices);
        graces.left().forEach(note -> notices.leftOut(index.of(note.on()), Message.of("intake.left.grace")));
        instants.forEach(note -> notices.leftOut(index.of(note.on()), Message.of("intake.left.instant")));
    }

    /** One bar more where the last stroke comes so near to the end of its bar that it is written behind it. */
    private List<TickBar> laid() {
        long off = notes.stream().mapToLong(Smf.Note::off).max().orElse(0);
        var all = laid(Math.max(struck.last(), off - file.perQuarter() / 4) + 1);
        var last = all.get(all.size() - 1);
        var written = Quantizer.of(last, strokes(last)).at(struck.last());
        return written.isBefore(last.length()) ? all : laid(last.end().floor() + 1);
    }

    private List<TickBar> laid(long to) {
        var signatures = file.tracks().stream()
                .flatMap(track -> track.signatures().stream())
                .toList();
        return BarLines.of(signatures, start(), to, file.perQuarter(), notices);
    }

    /** Our own files count in before they start, and say so. */
    private long start() {
        long first = struck.first();
        var markers = file.tracks().stream()
                .flatMap(track -> track.markers().stream())
                .toList();
        boolean countsIn = markers.stream()
                .anyMatch(marker -> marker.tick() == 0 && marker.text().equals("Count-in"));
        return markers.stream()
                .filter(marker -> countsIn && marker.text().equals("Start") && marker.tick() <= first)
                .mapToLong(Smf.Marker::tick)
                .max()
                .orElse(0);
    }

    private List<TickBar> withoutSilence(List<TickBar> all) {
        long first = struck.first();
        int silent = 0;
        while (silent + 1 < all.size() && !all.get(silent).end().isAfter(Fraction.of(first))) {
            silent++;
        }
        if (silent > 0) {
            notices.leftOut(Message.of("intake.left.silence", silent));
        }
        return all.subList(silent, all.size());
    }

    RoughLine draft() {
        var rhythms = new ArrayList<Quantizer>();
        for (int i = 0; i < bars.size(); i++) {
            rhythms.add(Quantizer.of(bars.get(i), strokes(bars.get(i))));
            tell(i, rhythms.get(i));
        }
        var swung = Swung.of(bars, onsets(rhythms));
        swung.swing().ifPresent(swing -> notices.guessed(Message.of("intake.guessed.swing", swing.toString())));
        var drafted = new Lengths(bars, index, rhythms, swung).of(graces);
        notices.guessed(Message.of("intake.guessed.lengths"));
        notices.guessed(Message.of("intake.guessed.hand"));
        var header = header(drafted).with(new Feel(swung.swing(), false));
        return new RoughLine(header, written(header), drafted);
    }

    private TreeSet<Long> strokes(TickBar bar) {
        long from = -bar.start().negated().floor();
        long to = -bar.end().negated().floor();
        return new TreeSet<>(struck.subSet(from, to));
    }

    private List<Fraction> onsets(List<Quantizer> rhythms) {
        var onsets = new ArrayList<Fraction>();
        for (int i = 0; i < bars.size(); i++) {
            var rhythm = rhythms.get(i);
            strokes(bars.get(i)).forEach(tick -> onsets.add(rhythm.at(tick)));
        }
        return onsets;
    }

    /** How the beats of a bar are divided, where that does not meet every stroke. */
    private void tell(int bar, Quantizer rhythm) {
        var played = rhythm.divisions().stream().filter(each -> !each.exact()).toList();
        double error =
                played.stream().mapToDouble(Quantizer.Division::error).max().orElse(0);
        if (!played.isEmpty()) {
            String parts = played.stream()
                    .map(each -> String.valueOf(each.parts()))
                    .distinct()
                    .collect(Collectors.joining(", "));
            long percent = (Math.round(error * 100) + 4) / 5 * 5;
            notices.guessed(bar, Message.of("intake.guessed.rhythm", parts, percent));
        }
    }

    private Header header(List<DraftNote> drafted) {
        var pitches = drafted.stream().map(DraftNote::midi).toList();
        var tuning = NeckGuess.of(pitches, Header.USUAL_FRETS);
        notices.guessed(Message.of("intake.guessed.neck", tuning.size()));
        var first = bars.get(0);
        var named = file.tracks().get(0);
        // MMA RP-001: in format 0, and in the first track of format 1, it is the name of the sequence
        boolean titled =
                (file.format() == 0 || named.notes().isEmpty()) && !named.name().equals("Line");
        return Header.PLAIN
                .withTitle(titled ? named.name() : "")
                .withRights(named.rights())
                .with(first.meter())
                .with(key(drafted))
                .with(tempo())
                .with(tuning)
                .with(Technique.FINGER);
    }

    private Key key(List<DraftNote> drafted) {
        return signs.keyAt(0).orElseGet(() -> {
            var key = KeyGuess.of(drafted);
            notices.guessed(Message.of("intake.guessed.key", key.toString()));
            return key;
        });
    }

    private Tempo tempo() {
        return signs.tempoAt(0).orElseGet(() -> {
            // MMA RP-001: without a tempo a file plays at 120
            notices.guessed(Message.of("intake.guessed.tempo", 120));
            return new Tempo(120, Fraction.of(1, 4));
        });
    }

    private List<Bar> written(Header header) {
        var all = new ArrayList<Bar>();
        var meter = header.meter();
        var key = header.key();
        var tempo = header.tempo();
        for (int i = 0; i < bars.size(); i++) {
            var bar = bars.get(i);
            var changes = signs.sectionAt(i).map(Changes.NONE::withSection).orElse(Changes.NONE);
            if (i > 0) {
                changes = bar.meter().equals(meter) ? changes : changes.with(bar.meter());
                var nextKey = signs.keyAt(i).orElse(key);
                changes = nextKey.equals(key) ? changes : changes.with(nextKey);
                var nextTempo = signs.tempoAt(i).orElse(tempo);
                changes = nextTempo.equals(tempo) ? changes : changes.with(nextTempo);
            }
            meter = bar.meter();
            key = changes.key().orElse(key);
            tempo = changes.tempo().orElse(tempo);
            all.add(bar(bar, changes));
        }
        return all;
    }

    private static Bar bar(TickBar bar, Changes changes) {
        return new Bar(
                Fraction.ZERO, bar.length(), changes, Repeats.NONE, List.of(), List.of(), List.of(), Optional.empty());
    }
}
