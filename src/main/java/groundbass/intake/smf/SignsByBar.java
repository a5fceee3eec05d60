package groundbass.intake.smf;

import groundbass.intake.draft.KeyNames;
import groundbass.intake.draft.PlayedTempo;
import groundbass.intake.notice.NoticeList;
import groundbass.score.Fraction;
import groundbass.score.Tempo;
import groundbass.text.Message;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What a file says beside its notes, at the bars from which a line has it. A line says such things at bar lines; what a
 * file says elsewhere, and what no line has, is told.
 */
final class SignsByBar {
    private static final Fraction A_MINUTE = Fraction.of(60_000_000);
    private static final Fraction HALF = Fraction.of(1, 2);

    /** A tempo that comes this near to a whole number is that number, for a file counts microseconds. */
    private static final Fraction NEAR = Fraction.of(1, 50);

    /** Where our own files count in, and where they begin then. */
    private static final Set<String> OUR_MARKERS = Set.of("Count-in", "Start");

    private final Smf file;
    private final List<TickBar> bars;
    private final BarIndex index;
    private final NoticeList notices;
    private final TreeMap<Integer, Key> keys = new TreeMap<>();
    private final TreeMap<Integer, Integer> tempos = new TreeMap<>();
    private final Map<Integer, String> sections = new HashMap<>();

    SignsByBar(Smf file, List<TickBar> bars, BarIndex index, NoticeList notices) {
        this.file = file;
        this.bars = bars;
        this.index = index;
        this.notices = notices;
        signatures();
        keys();
        tempos();
        sections();
    }

    /** The key of a bar, as far as the file has said one. */
    Optional<Key> keyAt(int bar) {
        return Optional.ofNullable(keys.floorEntry(bar)).map(Map.Entry::getValue);
    }

    /** The tempo of a bar, in the beats of its metre where that comes out whole. */
    Optional<Tempo> tempoAt(int bar) {
        return Optional.ofNullable(tempos.floorEntry(bar)).flatMap(entry -> tempo(entry.getValue(), bar));
    }

    Optional<String> sectionAt(int bar) {
        return Optional.ofNullable(sections.get(bar));
    }

    private <T> Stream<T> inOrder(Function<Smf.Track, List<T>> events, Comparator<T> order) {
        return file.tracks().stream()
                .flatMap(track -> events.apply(track).stream())
                .sorted(order);
    }

    private void signatures() {
        inOrder(Smf.Track::signatures, Comparator.comparingLong(Smf.Signature::tick))
                .filter(signature -> !BarLines.isKnown(signature) && !index.isBehind(signature.tick()))
                .forEach(signature -> notices.changed(index.at(signature.tick()), Message.of("intake.changed.common")));
    }

    private void keys() {
        inOrder(Smf.Track::keys, Comparator.comparingLong(Smf.Key::tick))
                .filter(key -> !index.isBehind(key.tick()))
                .forEach(this::key);
    }

    private void key(Smf.Key said) {
        int bar = index.at(said.tick());
        var key = KeyNames.of(said.fifths(), said.minor() ? Mode.MINOR : Mode.MAJOR);
        if (key.isEmpty()) {
            notices.leftOut(bar, Message.of("intake.left.key"));
        } else if (!key.equals(keyAt(bar))) {
            if (index.isInside(said.tick())) {
                notices.changed(bar, Message.of("intake.changed.middle", Message.of("intake.middle.key")));
            }
            keys.put(bar, key.get());
        }
    }

    private void tempos() {
        inOrder(Smf.Track::tempos, Comparator.comparingLong(Smf.Tempo::tick))
                .filter(tempo -> !index.isBehind(tempo.tick()))
                .forEach(this::tempo);
    }

    private void tempo(Smf.Tempo said) {
        int bar = index.at(said.tick());
        var tempo = tempo(said.micros(), bar);
        if (tempo.isEmpty()) {
            notices.leftOut(bar, Message.of("intake.left.tempo"));
        } else if (!tempo.equals(lastTempo(bar))) {
            changed(said, bar);
        }
    }

    /** At the bar where it stands, or else at the next. */
    private void changed(Smf.Tempo said, int bar) {
        boolean inside = index.isInside(said.tick());
        if (inside && bar + 1 == bars.size()) {
            notices.leftOut(bar, Message.of("intake.left.tempo.last"));
            return;
        }
        if (inside) {
            notices.changed(bar, Message.of("intake.changed.tempo"));
        }
        tempos.put(inside ? bar + 1 : bar, said.micros());
    }

    private Optional<Tempo> lastTempo(int bar) {
        return Optional.ofNullable(tempos.lastEntry()).flatMap(entry -> tempo(entry.getValue(), bar));
    }

    private Optional<Tempo> tempo(int micros, int bar) {
        return micros == 0
                ? Optional.empty()
                : PlayedTempo.of(quarters(micros), bars.get(bar).meter().pulse());
    }

    private static Fraction quarters(int micros) {
        var exact = A_MINUTE.dividedBy(micros);
        var whole = Fraction.of(exact.plus(HALF).floor());
        var away = exact.minus(whole);
        return away.isAfter(NEAR) || away.isBefore(NEAR.negated()) ? exact : whole;
    }

    private void sections() {
        inOrder(Smf.Track::markers, Comparator.comparingLong(Smf.Marker::tick))
                .filter(marker -> !marker.text().isEmpty() && !OUR_MARKERS.contains(marker.text()))
                .forEach(this::section);
    }

    private void section(Smf.Marker marker) {
        int bar = index.nearest(marker.tick());
        if (index.isBefore(marker.tick()) || bar == bars.size()) {
            notices.leftOut(Message.of("intake.left.sign", marker.text()));
            return;
        }
        var there = sections.putIfAbsent(bar, marker.text());
        if (there != null && !there.equals(marker.text())) {
            notices.leftOut(bar, Message.of("intake.left.sign", marker.text()));
        } else if (index.isInside(marker.tick())) {
            notices.changed(bar, Message.of("intake.changed.section", marker.text()));
        }
    }
}
