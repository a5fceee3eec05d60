package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.listening.Loudness;
import groundbass.performance.Performance;
import groundbass.score.Line;

/**
 * How loud everything that a line sounds like is made: the whole band at the line's own tempo reaches -16 LUFS, or comes
 * as near as a true peak of -1 dBTP allows (rule: lesson-loudness). One factor serves every
 * stem, tempo and mix of the line, so that stems add up to mixes and no change of tempo is a change of loudness.
 */
public final class Mastering {
    public static final double TARGET_LUFS = -16;
    public static final double CEILING_DBTP = -1;

    private Mastering() {}

    /** The factor for everything of this line; 1 for silence. */
    public static double gain(Line line, Groove groove) {
        var performance = Performance.of(line);
        return gain(performance, Band.of(performance, groove));
    }

    static double gain(Performance performance, Band band) {
        var mix = new Mix(Mix.FULL.stems(), false);
        return Loudness.of(BackingTrack.raw(performance, band, mix)).gainTo(TARGET_LUFS, CEILING_DBTP);
    }
}
