package groundbass.intake.xml;

import groundbass.intake.draft.DraftNote;
import groundbass.intake.notice.NoticeList;
import groundbass.score.Arrival;
import groundbass.score.Harmonic;
import groundbass.score.Header;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Where a note may be played, after what the file says of it, and which hand sounds it how. */
final class NotePlacing {
    private final Header header;
    private final int capo;
    private final NoticeList notices;

    NotePlacing(Header header, int capo, NoticeList notices) {
        this.header = header;
        this.capo = capo;
        this.notices = notices;
    }

    DraftNote of(RawNote raw) {
        var harmonic = harmonic(raw);
        var signs = trilled(raw, harmonic);
        var ornaments = harmonic.map(signs::with).orElse(signs);
        var grace = raw.from.filter(from -> !raw.dead);
        var arrival = grace.map(from -> kind(raw, from)).or(() -> raw.reached);
        boolean legato = grace.isEmpty()
                && raw.hand.isEmpty()
                && raw.reached
                        .filter(kind -> kind != Arrival.Kind.SLIDE || raw.slurEnds)
                        .isPresent();
        var pluck = legato ? Optional.<Technique>empty() : Optional.of(raw.hand.orElse(Technique.FINGER));
        return new DraftNote(
                raw.start,
                raw.end,
                raw.midi,
                places(raw, harmonic),
                raw.dead,
                pluck,
                arrival,
                grace.map(from -> OptionalInt.of(step(raw, from))).orElse(OptionalInt.empty()),
                ornaments,
                raw.name.filter(name -> !raw.dead));
    }

    /** Without a trill where the hand cannot play one. */
    private Ornaments trilled(RawNote raw, Optional<Harmonic> harmonic) {
        boolean stopped =
                !raw.dead && harmonic.isEmpty() && raw.ornaments.bend().isEmpty();
        if (!stopped && raw.ornaments.trill().isPresent()) {
            notices.leftOut(raw.bar, Message.of("intake.left.trill.hand"));
        }
        return stopped ? raw.ornaments : raw.ornaments.withoutTrill();
    }

    private static int step(RawNote raw, RawNote from) {
        boolean known = raw.fret.isPresent() && from.fret.isPresent();
        return known ? from.fret.getAsInt() - raw.fret.getAsInt() : from.midi - raw.midi;
    }

    private Arrival.Kind kind(RawNote raw, RawNote from) {
        var said = from.leaves.or(() -> raw.reached);
        if (said.isEmpty()) {
            notices.guessed(raw.bar, Message.of("intake.guessed.grace"));
        }
        return said.orElse(from.midi < raw.midi ? Arrival.Kind.HAMMER : Arrival.Kind.PULL);
    }

    private Optional<Harmonic> harmonic(RawNote raw) {
        if (raw.harmonic.isEmpty() || raw.dead) {
            return Optional.empty();
        }
        var harmonic = raw.harmonic.flatMap(RawNote.HarmonicSign::harmonic);
        boolean placed = raw.fret.isPresent();
        boolean reachable =
                harmonic.isPresent() && (placed || !nodes(raw, harmonic.get()).isEmpty());
        if (!reachable) {
            notices.leftOut(raw.bar, Message.of("intake.left.harmonic"));
        }
        return harmonic.filter(each -> reachable);
    }

    private List<Place> places(RawNote raw, Optional<Harmonic> harmonic) {
        var said = said(raw, harmonic);
        if (said.isPresent()) {
            return List.of(said.get());
        }
        if (harmonic.isPresent()) {
            return nodes(raw, harmonic.get());
        }
        int string = raw.string.orElse(0);
        return raw.dead
                ? List.of()
                : header.tuning().placesOf(raw.midi, header.frets()).stream()
                        .filter(place -> place.string() == string)
                        .map(Place.class::cast)
                        .toList();
    }

    /** String and fret, where they are on this neck and sound what the note sounds. */
    private Optional<Place> said(RawNote raw, Optional<Harmonic> harmonic) {
        boolean known = raw.string.isPresent()
                && raw.string.getAsInt() <= header.tuning().size();
        if (known && raw.dead) {
            return Optional.of(Place.dead(raw.string.getAsInt()));
        }
        if (!known || raw.fret.isEmpty()) {
            return Optional.empty();
        }
        int sounds = header.tuning().midi(new Fretted(raw.string.getAsInt(), raw.fret.getAsInt()));
        int away = raw.midi - sounds;
        boolean overCapo = capo > 0 && away == capo && raw.fret.getAsInt() + capo <= header.frets();
        if (overCapo) {
            return Optional.of(Place.of(raw.string.getAsInt(), raw.fret.getAsInt() + capo));
        }
        if (harmonic.isPresent() || away % 12 == 0) {
            return Optional.of(Place.of(raw.string.getAsInt(), raw.fret.getAsInt()));
        }
        notices.changed(raw.bar, Message.of("intake.changed.place"));
        return Optional.empty();
    }

    /** Where a harmonic of that sound lies; one that the file stops or touches lies where that pitch does. */
    private List<Place> nodes(RawNote raw, Harmonic harmonic) {
        var tuning = header.tuning();
        boolean sounding = raw.harmonic.filter(RawNote.HarmonicSign::sounding).isPresent();
        return IntStream.rangeClosed(1, tuning.size())
                .boxed()
                .flatMap(string -> IntStream.rangeClosed(1, header.frets())
                        .filter(fret -> {
                            int wanted =
                                    raw.midi - tuning.string(string).pitch().midi();
                            return sounding ? harmonic.semitonesAboveOpen(fret).orElse(-1) == wanted : fret == wanted;
                        })
                        .mapToObj(fret -> Place.of(string, fret)))
                .toList();
    }
}
