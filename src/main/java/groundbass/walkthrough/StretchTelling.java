package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.walkthrough.stretch.RhythmWords;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.stretch.Utterance;
import groundbass.walkthrough.stretch.VoiceTelling;
import groundbass.walkthrough.stretch.VoiceTelling.Known;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element.Chord;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is played in stretches of one bar, in one voice or two, or by an earlier bar. */
final class StretchTelling {
    private final Telling telling;
    private final Wording words;
    private final int index;
    private final WrittenBar written;
    private final Meter meter;
    private final Optional<Leaning> leaning;

    StretchTelling(Telling telling, int index, WrittenBar written, Optional<Leaning> leaning) {
        this.telling = telling;
        this.words = telling.words();
        this.index = index;
        this.written = written;
        this.meter = written.inForce().meter();
        this.leaning = leaning;
    }

    Utterance told(Stretch stretch) {
        return leaning.filter(each -> each.beats().contains(stretch))
                .map(each -> new EarlierWords(words).beats(each.on(), start().filter(name -> stretch.from()
                        .equals(written.bar().from()))))
                .map(told -> new Utterance(List.of(), told))
                .orElseGet(() -> itself(stretch));
    }

    boolean isEarlier(Stretch stretch) {
        return leaning.filter(each -> each.beats().contains(stretch)).isPresent();
    }

    boolean isWholeBar(Stretch stretch) {
        var bar = written.bar();
        return stretch.from().equals(bar.from()) && stretch.to().equals(bar.to()) && !bar.isPickup();
    }

    /** The name of the lowest note that the bar begins with: a shape that is moved is found by it. */
    Optional<String> start() {
        return written.voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(element -> element.onset().equals(written.bar().from()))
                .filter(Chord.class::isInstance)
                .flatMap(element -> ((Chord) element).heads().stream())
                .filter(head -> !head.tiedFrom() && !head.note().isDead())
                .min(Comparator.comparingInt(head -> head.pitch().midi()))
                .map(head -> words.name(head.pitch().name()));
    }

    /** Sentences about where the hand goes in a stretch after its first note. */
    List<String> moves(Stretch stretch) {
        boolean held = !stretch.from().equals(written.bar().from()) && isHeldInto(stretch);
        return telling.hand().later(index, stretch, held).stream()
                .map(at -> move(at, stretch))
                .toList();
    }

    /** Whether a note sounds on where a stretch begins. */
    boolean isHeldInto(Stretch stretch) {
        return written.voices().stream()
                .flatMap(voice -> stretch.elements(voice).stream().limit(1))
                .anyMatch(element -> element instanceof Chord
                        && (element.onset().isBefore(stretch.from()) || RhythmWords.isHeld(element)));
    }

    private String move(Fraction at, Stretch stretch) {
        int still = (int) written.bar().notes().stream()
                .map(Note::onset)
                .filter(onset -> !onset.isBefore(at) && onset.isBefore(stretch.to()))
                .distinct()
                .count();
        String fret = String.valueOf(telling.hand().fret(index, at));
        return words.say("hand.shift.before", still, words.number(still), fret);
    }

    private Utterance itself(Stretch stretch) {
        return switch (stretch.kind()) {
            case HOLD -> new Utterance(List.of(), words.say("hold"));
            case REST -> new Utterance(List.of(), rest(stretch));
            case PLAY -> voices(stretch);
        };
    }

    private String rest(Stretch stretch) {
        if (isWholeBar(stretch)) {
            return words.say("rest.bar");
        }
        boolean wholeBeats = stretch.from().equals(meter.beatStart(stretch.from()));
        int beats = BeatsTouched.between(meter, stretch.from(), stretch.to()).size();
        return wholeBeats && isCountABeat() && beats > 1 ? words.counted("rest.beats", beats) : words.say("rest");
    }

    private boolean isCountABeat() {
        return meter.beats().stream().allMatch(counts -> counts == 1);
    }

    /** A voice that rests while another sounds is passed over; of two, the one that is held is told first. */
    private Utterance voices(Stretch stretch) {
        var sounding = written.voices().stream()
                .filter(voice -> kind(voice, stretch) != Stretch.Kind.REST)
                .toList();
        if (sounding.size() == 1) {
            return voice(sounding.get(0), stretch, true);
        }
        var upper = voice(sounding.get(0), stretch, false);
        var lower = voice(sounding.get(1), stretch, false);
        if (kind(sounding.get(1), stretch) == Stretch.Kind.HOLD) {
            return new Utterance(List.of(), words.say("voices.over", upper.joined(words)));
        }
        if (kind(sounding.get(0), stretch) == Stretch.Kind.HOLD) {
            return new Utterance(List.of(), words.say("voices.under", lower.joined(words)));
        }
        return new Utterance(List.of(), lower.isFilling() ? above(lower, upper, stretch) : apart(upper, lower));
    }

    /**
     * What is played; of one stroke for several beats, which might be taken for one on each, how long it lasts.
     *
     * @param named whether the beats were named
     */
    String played(Stretch stretch, Utterance told, boolean named) {
        int beats = BeatsTouched.between(meter, stretch.from(), stretch.to()).size();
        return told.isFilling() && isCountABeat() && beats > 1 && named
                ? words.say("lasting.beats", told.played(), words.number(beats))
                : told.played();
    }

    private String above(Utterance lower, Utterance upper, Stretch stretch) {
        int beats = BeatsTouched.between(meter, stretch.from(), stretch.to()).size();
        String held = isCountABeat() && beats > 1
                ? words.say("voices.held", lower.played(), words.number(beats))
                : words.say("voices.held.on", lower.played());
        return words.say("voices.above", held, upper.joined(words));
    }

    private String apart(Utterance upper, Utterance lower) {
        return words.say("voices", upper.joined(words), lower.joined(words));
    }

    private static Stretch.Kind kind(Voice voice, Stretch stretch) {
        return Stretch.kind(voice, stretch.from(), stretch.to());
    }

    private Utterance voice(Voice voice, Stretch stretch, boolean alone) {
        var usual = telling.usual();
        var known = new Known(
                usual.isOf(written, words), usual.beat(), usual.isOf(written, stretch, words), alone && isCountABeat());
        return new VoiceTelling(words, telling.notes(index), voice, meter, known).text(stretch.from(), stretch.to());
    }
}
