package groundbass.walkthrough;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.walkthrough.idea.BarIdea;
import groundbass.walkthrough.idea.Breath;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.stretch.Utterance;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.StepText;
import groundbass.walkthrough.words.StepText.Lead;
import groundbass.walkthrough.words.Told;
import groundbass.walkthrough.words.Wording;
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
    private final StretchTelling stretches;

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
        this.stretches = new StretchTelling(telling, index, written, leaning);
    }

    /**
     * A part of the bar with its words, before its heading is known.
     *
     * @param known what is to be known before one plays it
     * @param each whether the words hold for each of several beats
     */
    private record Part(Stretch stretch, List<String> known, Utterance told, List<String> remarks, boolean each) {
        /** Whether a beat says the same as the one before and nothing else is said of it. */
        boolean isLike(Part before, Meter meter) {
            return stretch.kind() == Stretch.Kind.PLAY
                    && before.stretch().kind() == Stretch.Kind.PLAY
                    && told.equals(before.told())
                    && known.isEmpty()
                    && remarks.isEmpty()
                    && stretch.isBeat(meter);
        }

        /** The same, up to the end of a note that was told with its length. */
        Part longer(Part held) {
            var whole = new Stretch(stretch.from(), held.stretch().to(), stretch.kind());
            return new Part(whole, known, told.toItsEnd(), remarks, each);
        }

        Part and(Part next) {
            var both = new Stretch(stretch.from(), next.stretch().to(), stretch.kind());
            return new Part(both, known, told, remarks, true);
        }
    }

    /** The bar told beat by beat, equal beats together. */
    List<Told> beats() {
        var parts = new ArrayList<Part>();
        var all = Stretch.of(written);
        var joined = leaning.map(each -> each.joined(all)).orElse(all);
        for (var stretch : usualInTwos(joined)) {
            add(parts, part(stretch));
        }
        var idea = idea(parts);
        var told = new ArrayList<Told>();
        for (int i = 0; i < parts.size(); i++) {
            var next = parts.stream().skip(i + 1L).findFirst();
            var after = joined(Stream.of(
                    headings.standingLater(parts.get(i).stretch()),
                    idea.after().get(i),
                    parts.get(i).remarks(),
                    next.flatMap(this::handBefore).stream().toList()));
            told.add(
                    i == 0
                            ? opening(parts.get(0), idea.before(), after)
                            : told(parts.get(i), later(parts.get(i), after)));
        }
        return told;
    }

    /** Beats of the usual rhythm two by two, where nothing else is said of the second or of either. */
    private List<Stretch> usualInTwos(List<Stretch> stretches) {
        var twos = new ArrayList<Stretch>();
        for (var stretch : stretches) {
            int last = twos.size() - 1;
            boolean two = last >= 0 && isUsualBeat(twos.get(last)) && isUsualBeat(stretch) && !isSpokenOf(stretch);
            if (two && isPlain(twos.get(last).from(), stretch.to())) {
                twos.set(last, new Stretch(twos.get(last).from(), stretch.to(), stretch.kind()));
            } else {
                twos.add(stretch);
            }
        }
        return twos;
    }

    private boolean isPlain(Fraction from, Fraction to) {
        return telling.known(index, from, to).isEmpty()
                && telling.remarks(index, from, to).isEmpty();
    }

    private boolean isUsualBeat(Stretch stretch) {
        return stretch.isBeat(meter) && telling.usual().isOf(written, stretch, words);
    }

    private boolean isSpokenOf(Stretch stretch) {
        return headings.isMarked(stretch) || stretches.isEarlier(stretch);
    }

    private BarIdea.Said idea(List<Part> parts) {
        var breaths = parts.stream()
                .map(Part::stretch)
                .map(each -> new Breath(each.from(), each.to(), stretches.isEarlier(each)))
                .toList();
        return telling.idea().of(index, breaths);
    }

    /** The bar told in one step, by one that came before. */
    Told by(Earlier earlier) {
        var bar = written.bar();
        String told = new EarlierWords(words).one(earlier, stretches.start());
        var hand = telling.hand().sentences(index, words);
        var text = new StepText(
                headings.wholeBarParts(),
                hand.isEmpty() ? Lead.HEADING : Lead.SENTENCE,
                hand,
                List.of(),
                told,
                List.of());
        return told(bar.from(), bar.to(), "bar", text.said(words));
    }

    /** The bar told in one step, count by count. */
    Told brief() {
        var bar = written.bar();
        var notes = new NoteWords(words, telling.line().header().tuning());
        String told = new BriefTelling(words, notes, written, leaning, headings).text();
        return told(bar.from(), bar.to(), "bar", words.say("step", headings.wholeBar(), told));
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
        var remarks = telling.remarks(index, stretch.from(), stretch.to());
        var known = joined(Stream.of(telling.known(index, stretch.from(), stretch.to()), stretches.moves(stretch)));
        return new Part(stretch, known, stretches.told(stretch), remarks, false);
    }

    private Optional<String> handBefore(Part part) {
        return stretches.isHeldInto(part.stretch())
                ? Optional.empty()
                : telling.hand().next(index, part.stretch(), words);
    }

    /** The first beats of the bar: where much is to be known before they are played, that has sentences of its own. */
    private Told opening(Part part, List<String> idea, List<String> after) {
        var stretch = part.stretch();
        boolean pickup = written.bar().isPickup();
        var known = joined(Stream.of(
                pickup ? countIn() : List.of(),
                telling.hand().first(index, stretch, words).stream().toList(),
                idea,
                part.known()));
        boolean much = !known.isEmpty() || headings.isMuch(stretch);
        var where = joined(Stream.of(bar(), much ? List.of() : beats(part), headings.standing(stretch)));
        if (!much) {
            return told(part, plain(joined(Stream.of(where, rhythm(part))), part, after));
        }
        var beats = pickup ? List.<String>of() : headings.beatsOf(stretch);
        var how = joined(Stream.of(beats, even(part)));
        return told(part, new StepText(where, Lead.SENTENCE, known, how, played(part, !pickup), after));
    }

    private StepText later(Part part, List<String> after) {
        var standing = headings.standing(part.stretch());
        if (part.known().isEmpty()) {
            return plain(joined(Stream.of(bar(), beats(part), rhythm(part), standing)), part, after);
        }
        var how = joined(Stream.of(headings.beatsOf(part.stretch()), even(part)));
        var lead = standing.isEmpty() ? Lead.CLAUSE : Lead.SENTENCE;
        return new StepText(joined(Stream.of(bar(), standing)), lead, part.known(), how, played(part, true), after);
    }

    private StepText plain(List<String> where, Part part, List<String> after) {
        return new StepText(
                where, Lead.HEADING, List.of(), List.of(), played(part, !stretches.isWholeBar(part.stretch())), after);
    }

    private static List<String> rhythm(Part part) {
        return part.each() ? List.of() : part.told().rhythm();
    }

    /** The rhythm as it begins a sentence. */
    private static List<String> even(Part part) {
        var rhythm = rhythm(part);
        return part.told()
                .even()
                .map(List::of)
                .filter(even -> !rhythm.isEmpty())
                .orElse(rhythm);
    }

    private List<String> bar() {
        return List.of(headings.bar());
    }

    /** What is counted before a line that does not begin with its first count. */
    private List<String> countIn() {
        return written.bar().notes().stream()
                .map(Note::onset)
                .min(Comparator.naturalOrder())
                .flatMap(first -> Count.at(first, meter))
                .map(headings::countIn)
                .stream()
                .toList();
    }

    private List<String> beats(Part part) {
        return part.each() || !stretches.isWholeBar(part.stretch()) ? headings.beatsOf(part.stretch()) : List.of();
    }

    private String played(Part part, boolean named) {
        return part.each()
                ? words.say(
                        "each",
                        part.told().even().isPresent()
                                ? part.told().played()
                                : part.told().joined(words))
                : stretches.played(part.stretch(), part.told(), named);
    }

    private Told told(Part part, StepText text) {
        return told(part.stretch().from(), part.stretch().to(), "beats", text.said(words));
    }

    private static List<String> joined(Stream<List<String>> some) {
        return some.flatMap(List::stream).toList();
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
