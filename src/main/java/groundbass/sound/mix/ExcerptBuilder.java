package groundbass.sound.mix;

import groundbass.groove.Click;
import groundbass.groove.DrumHit;
import groundbass.groove.VoicedChord;
import groundbass.performance.TimedNote;
import groundbass.performance.When;
import groundbass.score.Tuning;
import groundbass.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/** What is being gathered for one excerpt, still in the time of the performance. */
final class ExcerptBuilder {
    /** Far beyond any sound, and still a number of samples. */
    private static final double NEVER = 1e9;

    /** So little makes equal moments of equal bars fall on equal samples, however their doubles were rounded. */
    private static final double ALIKE = 1e-9;

    final List<TimedNote> notes = new ArrayList<>();
    final List<DrumHit> hits = new ArrayList<>();
    final List<VoicedChord> chords = new ArrayList<>();
    final List<Click> clicks = new ArrayList<>();
    double closes = NEVER;

    /** @param start when its bar starts */
    Excerpt bound(SampleRate rate, Tuning tuning, double start) {
        double first =
                notes.stream().mapToDouble(note -> note.when().start()).min().orElse(start);
        int lead = (int) Math.ceil(Math.max(0, start - first - ALIKE) * rate.hertz());
        double shift = ALIKE - start + (double) lead / rate.hertz();
        return new Excerpt(
                tuning,
                lead,
                notes.stream().map(note -> shifted(note, shift)).toList(),
                hits.stream().map(hit -> shifted(hit, shift)).toList(),
                closes + shift,
                chords.stream().map(chord -> shifted(chord, shift)).toList(),
                clicks.stream().map(click -> shifted(click, shift)).toList());
    }

    private static TimedNote shifted(TimedNote note, double shift) {
        return new TimedNote(
                note.note(),
                note.origin(),
                shifted(note.when(), shift),
                note.attack(),
                note.pitch(),
                note.force(),
                note.curve(),
                note.grace());
    }

    private static DrumHit shifted(DrumHit hit, double shift) {
        return new DrumHit(hit.piece(), hit.stroke(), hit.at(), hit.seconds() + shift, hit.force());
    }

    private static VoicedChord shifted(VoicedChord chord, double shift) {
        return new VoicedChord(chord.voicing(), shifted(chord.when(), shift), chord.velocity());
    }

    private static Click shifted(Click click, double shift) {
        return new Click(click.at(), click.seconds() + shift, click.weight(), click.countIn());
    }

    private static When shifted(When when, double shift) {
        return new When(when.at(), when.until(), when.start() + shift, when.end() + shift);
    }
}
