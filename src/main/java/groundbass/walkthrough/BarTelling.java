package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.score.Tuning;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.List;

/** One bar as steps. */
final class BarTelling {
    private final Vocabulary words;
    private final Tuning tuning;
    private final WrittenBar written;
    private final Meter meter;
    private final HeadingWords headings;

    BarTelling(Vocabulary words, Tuning tuning, WrittenBar written) {
        this.words = words;
        this.tuning = tuning;
        this.written = written;
        this.meter = written.inForce().meter();
        this.headings = new HeadingWords(words, written);
    }

    /** The bar told beat by beat. */
    List<Step> beats() {
        return Stretch.of(written).stream().map(this::step).toList();
    }

    /** The bar told in one step: that it repeats an earlier one. */
    Step sameAs(int number) {
        var bar = written.bar();
        String heading = headings.wholeBar();
        String text =
                number == 0 ? words.say("same.pickup", heading) : words.say("same", heading, String.valueOf(number));
        return new Step(passage(bar.from(), bar.to()), text);
    }

    private Step step(Stretch stretch) {
        String text = words.say("step", headings.of(stretch), told(stretch));
        return new Step(passage(stretch.from(), stretch.to()), text);
    }

    private String told(Stretch stretch) {
        return switch (stretch.kind()) {
            case HOLD -> words.say("hold");
            case REST -> rest(stretch);
            case PLAY -> voices(stretch);
        };
    }

    private String rest(Stretch stretch) {
        var bar = written.bar();
        if (stretch.from().equals(bar.from()) && stretch.to().equals(bar.to()) && !bar.isPickup()) {
            return words.say("rest.bar");
        }
        boolean wholeBeats = stretch.from().equals(meter.beatStart(stretch.from()));
        int beats = Beats.between(meter, stretch.from(), stretch.to()).size();
        return wholeBeats ? words.counted("rest.beats", beats) : words.say("rest");
    }

    /** A voice that rests while another sounds is passed over. */
    private String voices(Stretch stretch) {
        var told = written.voices().stream()
                .filter(voice -> Stretch.kind(voice, stretch.from(), stretch.to()) != Stretch.Kind.REST)
                .map(voice -> voice(voice, stretch))
                .toList();
        return told.size() == 1 ? told.get(0) : words.say("voices", told.get(0), told.get(1));
    }

    private String voice(Voice voice, Stretch stretch) {
        return new VoiceTelling(words, tuning, voice, meter).text(stretch.from(), stretch.to());
    }

    private Passage passage(Fraction from, Fraction to) {
        int number = written.inForce().number();
        var end = to.equals(written.bar().to()) ? new Position(number + 1, Fraction.ZERO) : new Position(number, to);
        return new Passage(new Position(number, from), end);
    }
}
