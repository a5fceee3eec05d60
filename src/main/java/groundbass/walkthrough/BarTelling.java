package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.walkthrough.VoiceTelling.Known;
import groundbass.walkthrough.VoiceTelling.Said;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.StepText;
import groundbass.walkthrough.words.Told;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element.Chord;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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
    private record Part(Stretch stretch, Said told, List<String> remarks, boolean each) {
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
        return parts.stream().map(part -> step(part, part == parts.get(0))).toList();
    }

    /** The bar told in one step, by one that came before. */
    Told by(Earlier earlier) {
        var bar = written.bar();
        String told = new EarlierWords(words).one(earlier, start());
        var where = new ArrayList<>(List.of(headings.wholeBar()));
        where.addAll(telling.hand().inHeading(index, words));
        return told(bar.from(), bar.to(), "bar", StepText.plain(where, told).said(words));
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

    /** What is to be known of the whole bar is said before its first beats, but not between a beat and its tuplet. */
    private Told step(Part part, boolean first) {
        var idea = first ? idea() : List.<String>of();
        boolean plain = first && !written.bar().isPickup() && !hasTuplet();
        var before = plain ? known(part.stretch(), idea) : List.<String>of();
        return before.isEmpty() ? inOneHeading(part, first, plain ? List.of() : idea) : opening(part, before);
    }

    /** The first beats of the bar, and before them what is to be known of all of it. */
    private Told opening(Part part, List<String> before) {
        var stretch = part.stretch();
        var where = joined(Stream.of(List.of(headings.bar()), headings.standing(stretch)));
        var beats = joined(Stream.of(beats(part), rhythm(part), telling.hand().later(index, stretch, meter, words)));
        return told(part, new StepText(where, before, beats, played(part), part.remarks()));
    }

    /** Beats whose heading has all that goes before them. */
    private Told inOneHeading(Part part, boolean first, List<String> after) {
        var stretch = part.stretch();
        var standing = headings.standing(stretch);
        var where = joined(Stream.of(
                List.of(headings.bar()),
                beats(part),
                first ? standing : rhythm(part),
                first ? rhythm(part) : standing,
                telling.hand().inHeading(index, stretch, meter, words)));
        return told(
                part,
                new StepText(where, List.of(), List.of(), played(part), joined(Stream.of(after, part.remarks()))));
    }

    private List<String> beats(Part part) {
        return part.each() || !isWholeBar(part.stretch()) ? headings.beatsOf(part.stretch()) : List.of();
    }

    private static List<String> rhythm(Part part) {
        return part.each() ? List.of() : part.told().rhythm();
    }

    private String played(Part part) {
        return part.each()
                ? words.say("each", part.told().joined(words))
                : part.told().played();
    }

    private Told told(Part part, StepText text) {
        return told(part.stretch().from(), part.stretch().to(), "beats", text.said(words));
    }

    private static List<String> joined(Stream<List<String>> some) {
        return some.flatMap(List::stream).toList();
    }

    /** Where the hand lies for its first beats, and what the bar is made of. */
    private List<String> known(Stretch stretch, List<String> idea) {
        return Stream.concat(telling.hand().first(index, stretch, words).stream(), idea.stream())
                .toList();
    }

    private List<String> idea() {
        return leaning.map(each -> telling.idea().of(index, each::covers))
                .orElseGet(() -> telling.idea().of(index));
    }

    private boolean hasTuplet() {
        return written.voices().stream().anyMatch(voice -> !voice.tuplets().isEmpty());
    }

    private boolean isWholeBar(Stretch stretch) {
        var bar = written.bar();
        return stretch.from().equals(bar.from()) && stretch.to().equals(bar.to()) && !bar.isPickup();
    }

    private Said told(Stretch stretch) {
        return leaning.filter(each -> each.beats().contains(stretch))
                .map(each -> new EarlierWords(words).beats(each.on(), start().filter(name -> stretch.from()
                        .equals(written.bar().from()))))
                .map(told -> new Said(List.of(), told))
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

    private Said itself(Stretch stretch) {
        return switch (stretch.kind()) {
            case HOLD -> new Said(List.of(), words.say("hold"));
            case REST -> new Said(List.of(), rest(stretch));
            case PLAY -> voices(stretch);
        };
    }

    private String rest(Stretch stretch) {
        if (isWholeBar(stretch)) {
            return words.say("rest.bar");
        }
        boolean wholeBeats = stretch.from().equals(meter.beatStart(stretch.from()));
        int beats = BeatsTouched.between(meter, stretch.from(), stretch.to()).size();
        return wholeBeats && isCountABeat() ? words.counted("rest.beats", beats) : words.say("rest");
    }

    private boolean isCountABeat() {
        return meter.beats().stream().allMatch(counts -> counts == 1);
    }

    /** A voice that rests while another sounds is passed over; of two, the one that is held is told first. */
    private Said voices(Stretch stretch) {
        var sounding = written.voices().stream()
                .filter(voice -> kind(voice, stretch) != Stretch.Kind.REST)
                .toList();
        if (sounding.size() == 1) {
            return voice(sounding.get(0), stretch);
        }
        var upper = voice(sounding.get(0), stretch);
        var lower = voice(sounding.get(1), stretch);
        if (kind(sounding.get(1), stretch) == Stretch.Kind.HOLD) {
            return new Said(List.of(), words.say("voices.over", upper.joined(words)));
        }
        if (kind(sounding.get(0), stretch) == Stretch.Kind.HOLD) {
            return new Said(List.of(), words.say("voices.under", lower.joined(words)));
        }
        return new Said(
                List.of(),
                lower.isOne()
                        ? words.say("voices.above", lower.noteFirst(words), upper.joined(words))
                        : words.say("voices", upper.joined(words), lower.joined(words)));
    }

    private static Stretch.Kind kind(Voice voice, Stretch stretch) {
        return Stretch.kind(voice, stretch.from(), stretch.to());
    }

    private Said voice(Voice voice, Stretch stretch) {
        var usual = telling.usual();
        var known = new Known(
                usual.isOf(written, words),
                usual.beat(),
                written.voices().size() == 1 && !isWholeBar(stretch) && isCountABeat());
        return new VoiceTelling(words, telling.notes(index), voice, meter, known).text(stretch.from(), stretch.to());
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
