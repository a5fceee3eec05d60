package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Told;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element.Chord;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** One bar as steps. */
final class BarTelling {
    private final Telling telling;
    private final Wording words;
    private final int index;
    private final WrittenBar written;
    private final Meter meter;
    private final HeadingWords headings;
    private final Optional<Leaning> leaning;

    /**
     * @param index   of the bar in its line
     * @param leaning what is said by an earlier bar
     */
    BarTelling(Telling telling, int index, WrittenBar written, Optional<Leaning> leaning) {
        this.leaning = leaning;
        this.telling = telling;
        this.words = telling.words();
        this.index = index;
        this.written = written;
        this.meter = written.inForce().meter();
        this.headings = new HeadingWords(telling, index, written);
    }

    /**
     * A part of the bar with its words, before its heading is known.
     *
     * @param each whether the words hold for each of several beats
     */
    private record Part(Stretch stretch, String told, List<String> remarks, boolean each) {
        /** Whether a beat says the same as the one before and nothing else is said of it. */
        boolean isLike(Part before, Meter meter) {
            return stretch.kind() == Stretch.Kind.PLAY
                    && before.stretch().kind() == Stretch.Kind.PLAY
                    && told.equals(before.told())
                    && remarks.isEmpty()
                    && stretch.isBeat(meter);
        }

        /** The same, up to the end of a note that was told with its length. */
        Part longer(Part held) {
            var whole = new Stretch(stretch.from(), held.stretch().to(), stretch.kind());
            return new Part(whole, told, remarks, each);
        }

        Part and(Part next) {
            var both = new Stretch(stretch.from(), next.stretch().to(), stretch.kind());
            return new Part(both, told, remarks, true);
        }
    }

    /** The bar told beat by beat, equal beats together. */
    List<Told> beats() {
        var parts = new ArrayList<Part>();
        var stretches = Stretch.of(written);
        for (var stretch : leaning.map(each -> each.joined(stretches)).orElse(stretches)) {
            add(parts, part(stretch));
        }
        return parts.stream().map(this::step).toList();
    }

    /** The bar told in one step, by one that came before. */
    Told by(Earlier earlier) {
        var bar = written.bar();
        String text = new EarlierWords(words).one(headings.wholeBar(), earlier, start());
        return told(bar.from(), bar.to(), "bar", text);
    }

    /** The bar told in one step, count by count. */
    Told brief() {
        var bar = written.bar();
        var plain = new HeadingWords(telling, index, written);
        var notes = new NoteWords(words, telling.line().header().tuning());
        String told = new BriefTelling(words, notes, written, leaning, plain).text();
        return told(bar.from(), bar.to(), "bar", words.say("step", plain.wholeBar(), told));
    }

    private void add(List<Part> parts, Part next) {
        int last = parts.size() - 1;
        boolean together = last >= 0 && next.isLike(parts.get(last), meter) && !headings.isMarked(next.stretch());
        if (together) {
            parts.set(last, parts.get(last).and(next));
        } else if (last >= 0 && goesOn(parts.get(last), next.stretch())) {
            parts.set(last, parts.get(last).longer(next));
        } else {
            parts.add(next);
        }
    }

    /** Whether a stretch only lets a note end whose whole length was told, with no tie in between. */
    private boolean goesOn(Part before, Stretch held) {
        return held.kind() == Stretch.Kind.HOLD
                && before.stretch().kind() == Stretch.Kind.PLAY
                && !before.each()
                && written.voices().size() == 1
                && written.voices().get(0).elements().stream()
                        .noneMatch(element -> !element.onset().isBefore(held.from())
                                && element.onset().isBefore(held.to()));
    }

    private Part part(Stretch stretch) {
        return new Part(stretch, told(stretch), telling.remarks(index, stretch.from(), stretch.to()), false);
    }

    private Told step(Part part) {
        var stretch = part.stretch();
        String text = part.each()
                ? words.say("step.each", headings.ofBeats(stretch), part.told())
                : words.say("step", headings.of(stretch), part.told());
        var sentences = new ArrayList<>(List.of(text));
        sentences.addAll(part.remarks());
        return told(stretch.from(), stretch.to(), "beats", String.join(" ", sentences));
    }

    private String told(Stretch stretch) {
        return leaning.filter(each -> each.beats().contains(stretch))
                .map(each -> new EarlierWords(words).beats(each.on(), start().filter(name -> stretch.from()
                        .equals(written.bar().from()))))
                .orElseGet(() -> itself(stretch));
    }

    /** The name of the lowest note that the bar begins with: a shape that is moved is found by it. */
    private Optional<String> start() {
        return written.voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(element -> element.onset().equals(written.bar().from()))
                .filter(Chord.class::isInstance)
                .flatMap(element -> ((Chord) element).heads().stream())
                .filter(head -> !head.tiedFrom() && !head.note().isDead())
                .min(Comparator.comparingInt(head -> head.pitch().midi()))
                .map(head -> words.name(head.pitch().name()));
    }

    private String itself(Stretch stretch) {
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
        int beats = BeatsTouched.between(meter, stretch.from(), stretch.to()).size();
        boolean plain = meter.beats().stream().allMatch(counts -> counts == 1);
        return wholeBeats && plain ? words.counted("rest.beats", beats) : words.say("rest");
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
        var tuning = telling.line().header().tuning();
        return new VoiceTelling(words, tuning, voice, meter, telling.usualRhythm()).text(stretch.from(), stretch.to());
    }

    private Told told(Fraction from, Fraction to, String kind, String text) {
        var notes = written.bar().notes().stream()
                .filter(note -> !note.onset().isBefore(from) && note.onset().isBefore(to))
                .toList();
        return new Told(passage(from, to), ToldSubject.notes(kind, from, to, notes), text);
    }

    private Passage passage(Fraction from, Fraction to) {
        int number = written.inForce().number();
        var end = to.equals(written.bar().to()) ? new Position(number + 1, Fraction.ZERO) : new Position(number, to);
        return new Passage(new Position(number, from), end);
    }
}
