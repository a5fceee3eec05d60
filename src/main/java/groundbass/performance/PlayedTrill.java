package groundbass.performance;

import groundbass.score.Arrival.Kind;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Trill;
import java.util.ArrayList;
import java.util.List;

/**
 * A trill as it is played: one stroke, then the fretting hand hammers the note above and pulls off again, as fast as the
 * note is long enough for, and ends where it began (rule: trill-rate).
 */
final class PlayedTrill {
    private static final double NOTES_A_SECOND = 8;

    /** Once up and back. */
    private static final int FEWEST = 3;

    private PlayedTrill() {}

    /**
     * The notes in place of one.
     *
     * @param plain as it would sound without the trill; its start and end are those of all of them together
     * @param written where the written note ends; what sounds on behind it is the last of the notes alone
     */
    static List<TimedNote> of(TimedNote plain, Trill trill, Fraction written, TempoMap tempos) {
        var from = plain.when().at();
        var to = plain.when().until();
        var quick = When.of(from, to.min(written), tempos);
        int count = count(quick.seconds());
        var share = quick.until().minus(from).dividedBy(count);
        var notes = new ArrayList<TimedNote>();
        for (int i = 0; i < count; i++) {
            var start = from.plus(share.times(i));
            var end = i + 1 < count ? start.plus(share) : to;
            notes.add(note(plain, trill, i, When.of(start, end, tempos)));
        }
        return notes;
    }

    /** Odd, since it ends on its own note. */
    private static int count(double seconds) {
        int most = Math.max(FEWEST, (int) (seconds * NOTES_A_SECOND));
        return most - 1 + most % 2;
    }

    private static TimedNote note(TimedNote plain, Trill trill, int index, When when) {
        if (index == 0) {
            return new TimedNote(
                    plain.note(),
                    plain.origin(),
                    when,
                    plain.attack(),
                    plain.pitch(),
                    plain.force(),
                    PitchCurve.FLAT,
                    false);
        }
        boolean above = index % 2 == 1;
        var by = above ? Kind.HAMMER : Kind.PULL;
        return new TimedNote(
                plain.note(),
                plain.origin(),
                when,
                new Attack.Continued(by, plain.attack().hand()),
                plain.pitch() + (above ? trill.frets() : 0),
                Velocity.continued(unaccented(plain.note()), by, plain.force()),
                PitchCurve.FLAT,
                true);
    }

    /** An accent is that of the stroke. */
    private static Note unaccented(Note note) {
        return note.withOrnaments(Ornaments.NONE);
    }
}
