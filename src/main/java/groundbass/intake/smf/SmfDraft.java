package groundbass.intake.smf;

import groundbass.intake.draft.Draft;
import groundbass.intake.draft.DraftNote;
import groundbass.intake.draft.KeyGuess;
import groundbass.intake.draft.KeyNames;
import groundbass.intake.draft.NeckGuess;
import groundbass.intake.draft.PlayedTempo;
import groundbass.intake.notice.Notices;
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
import groundbass.theory.Mode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What was played as notes of bars. Mutable while it works; one for a part. */
final class SmfDraft {
    private static final Fraction A_MINUTE = Fraction.of(60_000_000);

    /** A tempo that comes this near to a whole number is that number, for a file counts microseconds. */
    private static final Fraction NEAR = Fraction.of(1, 50);

    private final Smf file;
    private final Graces graces;
    private final List<Smf.Note> notes;
    private final Notices notices;
    private final TreeMap<Long, Integer> tempos = new TreeMap<>();
    private final List<Beats> bars;

    SmfDraft(Smf file, List<Smf.Note> played, Notices notices) {
        this.file = file;
        this.graces = Graces.of(played, file.perQuarter());
        this.notes = graces.notes();
        this.notices = notices;
        file.tracks().stream()
                .flatMap(track -> track.tempos().stream())
                .forEach(tempo -> tempos.put(tempo.tick(), tempo.micros()));
        long struck = notes.stream().mapToLong(Smf.Note::on).max().orElse(0);
        long off = notes.stream().mapToLong(Smf.Note::off).max().orElse(0);
        long last = Math.max(struck, off - file.perQuarter() / 4);
        var signatures = file.tracks().stream()
                .flatMap(track -> track.signatures().stream())
                .toList();
        this.bars = withoutSilence(BarLines.of(signatures, start(), last + 1, file.perQuarter(), notices));
    }

    /** Our own files count in before they start, and say so. */
    private long start() {
        long first = notes.stream().mapToLong(Smf.Note::on).min().orElse(0);
        var markers = markers();
        boolean countsIn = markers.stream()
                .anyMatch(marker -> marker.tick() == 0 && marker.text().equals("Count-in"));
        return markers.stream()
                .filter(marker -> countsIn && marker.text().equals("Start") && marker.tick() <= first)
                .mapToLong(Smf.Marker::tick)
                .max()
                .orElse(0);
    }

    private List<Smf.Marker> markers() {
        return file.tracks().stream().flatMap(track -> track.markers().stream()).toList();
    }

    private List<Beats> withoutSilence(List<Beats> all) {
        long first = notes.stream().mapToLong(Smf.Note::on).min().orElse(0);
        int silent = 0;
        while (silent + 1 < all.size() && !all.get(silent).end().isAfter(Fraction.of(first))) {
            silent++;
        }
        if (silent > 0) {
            notices.leftOut(Message.of("intake.left.silence", silent));
        }
        return all.subList(silent, all.size());
    }

    Draft draft() {
        var all = new TreeSet<Long>();
        notes.forEach(note -> all.add(note.on()));
        var rhythms = new ArrayList<Rhythm>();
        for (int i = 0; i < bars.size(); i++) {
            rhythms.add(Rhythm.of(bars.get(i), strokes(all, bars.get(i))));
            tell(i, rhythms.get(i));
        }
        var swung = Swung.of(bars, onsets(rhythms, all));
        swung.swing().ifPresent(swing -> notices.guessed(Message.of("intake.guessed.swing", swing.toString())));
        var drafted = new Lengths(bars, rhythms, swung).of(graces);
        notices.guessed(Message.of("intake.guessed.lengths"));
        notices.guessed(Message.of("intake.guessed.hand"));
        var header = header(drafted).with(new Feel(swung.swing(), false));
        return new Draft(header, written(header), drafted);
    }

    private TreeSet<Long> strokes(TreeSet<Long> all, Beats bar) {
        long from = -bar.start().negated().floor();
        long to = -bar.end().negated().floor();
        return new TreeSet<>(all.subSet(from, to));
    }

    private List<Fraction> onsets(List<Rhythm> rhythms, TreeSet<Long> all) {
        var onsets = new ArrayList<Fraction>();
        for (int i = 0; i < bars.size(); i++) {
            var rhythm = rhythms.get(i);
            strokes(all, bars.get(i)).forEach(tick -> onsets.add(rhythm.at(tick)));
        }
        return onsets;
    }

    /** How the beats of a bar are divided, where that does not meet every stroke. */
    private void tell(int bar, Rhythm rhythm) {
        var played = rhythm.divisions().stream().filter(each -> !each.exact()).toList();
        double error = played.stream().mapToDouble(Rhythm.Division::error).max().orElse(0);
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
        var title = named.notes().isEmpty() && !named.name().equals("Line") ? named.name() : "";
        return Header.PLAIN
                .withTitle(title)
                .withRights(named.rights())
                .with(first.meter())
                .with(key(drafted))
                .with(tempo(first))
                .with(tuning)
                .with(Technique.FINGER);
    }

    private Key key(List<DraftNote> drafted) {
        var said = keyAt(bars.get(0));
        if (said.isEmpty()) {
            notices.guessed(
                    Message.of("intake.guessed.key", KeyGuess.of(drafted).toString()));
        }
        return said.orElseGet(() -> KeyGuess.of(drafted));
    }

    private Optional<Key> keyAt(Beats bar) {
        return file.tracks().stream()
                .flatMap(track -> track.keys().stream())
                .filter(key -> !Fraction.of(key.tick()).isAfter(bar.start()))
                .max(Comparator.comparingLong(Smf.Key::tick))
                .flatMap(key -> KeyNames.of(key.fifths(), key.minor() ? Mode.MINOR : Mode.MAJOR));
    }

    private Tempo tempo(Beats bar) {
        var said = tempoAt(bar);
        if (said.isEmpty()) {
            // MMA RP-001: without a tempo a file plays at 120
            notices.guessed(Message.of("intake.guessed.tempo", 120));
        }
        return said.orElse(new Tempo(120, Fraction.of(1, 4)));
    }

    private Optional<Tempo> tempoAt(Beats bar) {
        return Optional.ofNullable(tempos.floorEntry(bar.start().floor()))
                .flatMap(entry ->
                        PlayedTempo.of(quarters(entry.getValue()), bar.meter().pulse()));
    }

    private static Fraction quarters(int micros) {
        var exact = A_MINUTE.dividedBy(micros);
        var whole = Fraction.of(exact.plus(Fraction.of(1, 2)).floor());
        var away = exact.minus(whole);
        return away.isAfter(NEAR) || away.isBefore(NEAR.negated()) ? exact : whole;
    }

    private List<Bar> written(Header header) {
        var all = new ArrayList<Bar>();
        var meter = header.meter();
        var key = header.key();
        var tempo = header.tempo();
        for (int i = 0; i < bars.size(); i++) {
            var bar = bars.get(i);
            var changes = sectioned(bar);
            if (i > 0) {
                changes = bar.meter().equals(meter) ? changes : changes.with(bar.meter());
                changes = keyAt(bar).orElse(key).equals(key)
                        ? changes
                        : changes.with(keyAt(bar).orElse(key));
                changes = tempoAt(bar).orElse(tempo).equals(tempo)
                        ? changes
                        : changes.with(tempoAt(bar).orElse(tempo));
            }
            meter = bar.meter();
            key = changes.key().orElse(key);
            tempo = changes.tempo().orElse(tempo);
            all.add(bar(bar, changes));
        }
        return all;
    }

    private Changes sectioned(Beats bar) {
        return markers().stream()
                .filter(marker -> bar.start().equals(Fraction.of(marker.tick())))
                .map(Smf.Marker::text)
                .filter(text -> !text.isEmpty() && !text.equals("Start") && !text.equals("Count-in"))
                .findFirst()
                .map(Changes.NONE::withSection)
                .orElse(Changes.NONE);
    }

    private static Bar bar(Beats bar, Changes changes) {
        return new Bar(
                Fraction.ZERO, bar.length(), changes, Repeats.NONE, List.of(), List.of(), List.of(), Optional.empty());
    }
}
