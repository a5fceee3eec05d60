package groundbass.midi;

import groundbass.groove.Band;
import groundbass.groove.Click;
import groundbass.groove.Click.Weight;
import groundbass.groove.DrumHit;
import groundbass.groove.Piece;
import groundbass.score.Fraction;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What plays along: drums on channel 10, chords on channel 11, the click on the last. */
final class BandTracks {
    private static final int RIGHT = 76;
    private static final int MIDDLE = 64;
    private static final int HIGH = 84;
    private static final int LOW = 79;
    private static final long DRUM_TICKS = 60;
    private static final Fraction CLICK_LENGTH = Fraction.of(1, 16);

    private BandTracks() {}

    static List<Track> of(Band band, Opening opening) {
        return List.of(drums(band.drums()), chords(band), clicks(band.clicks(), opening));
    }

    /** Written from the end, so that each stroke knows when the same piece is struck again. */
    private static Track drums(List<DrumHit> hits) {
        var track = new Track().name("Drums").instrument(GeneralMidi.DRUM_CHANNEL, 0, 100, MIDDLE);
        Map<Piece, Long> next = new EnumMap<>(Piece.class);
        for (int i = hits.size() - 1; i >= 0; i--) {
            var hit = hits.get(i);
            long on = Ticks.of(hit.at());
            long off = Math.min(on + DRUM_TICKS, next.getOrDefault(hit.piece(), Long.MAX_VALUE));
            track.note(on, off, GeneralMidi.DRUM_CHANNEL, GeneralMidi.key(hit.piece()), hit.velocity());
            next.put(hit.piece(), on);
        }
        return track;
    }

    private static Track chords(Band band) {
        int program = GeneralMidi.program(band.groove().instruments().chords());
        var track = new Track().name("Chords").instrument(GeneralMidi.CHORD_CHANNEL, program, 84, RIGHT);
        for (var chord : band.chords()) {
            long on = Ticks.of(chord.when().at());
            long off = Ticks.of(chord.when().until());
            chord.voicing()
                    .midi()
                    .forEach(key -> track.note(on, off, GeneralMidi.CHORD_CHANNEL, key, chord.velocity()));
        }
        return track;
    }

    private static Track clicks(List<Click> clicks, Opening opening) {
        var track = new Track().name("Click").instrument(GeneralMidi.CLICK_CHANNEL, GeneralMidi.WOODBLOCK, 127, MIDDLE);
        for (var click : clicks) {
            if (click.countIn() && opening == Opening.FIRST_BAR) {
                continue;
            }
            long on = Ticks.of(click.at());
            int key = click.first() ? HIGH : LOW;
            track.note(on, on + Ticks.of(CLICK_LENGTH), GeneralMidi.CLICK_CHANNEL, key, velocity(click.weight()));
        }
        return track;
    }

    /** rule: count-in for the first two; the rest is common practice, no source. */
    private static int velocity(Weight weight) {
        return switch (weight) {
            case BAR -> 100;
            case BEAT -> 80;
            case COUNT -> 60;
        };
    }
}
