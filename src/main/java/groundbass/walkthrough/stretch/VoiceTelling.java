package groundbass.walkthrough.stretch;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.walkthrough.stretch.Utterance.Extent;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import java.util.List;
import java.util.Optional;

/** One voice of a stretch: what carries on, the rhythm of what begins, and its notes. */
public final class VoiceTelling {
    private final Wording words;
    private final PhraseWords phrases;
    private final Voice voice;
    private final Meter meter;
    private final Known known;

    /**
     * What was told before.
     *
     * @param bar  whether it was the rhythm of the bar
     * @param beat the rhythm of a beat, if any
     * @param usual whether each beat of what is told has that rhythm
     * @param alone whether no other voice is told with it and beats were named, so that one can count through its rests
     */
    public record Known(boolean bar, Optional<String> beat, boolean usual, boolean alone) {}

    public VoiceTelling(Wording words, NoteWords notes, Voice voice, Meter meter, Known known) {
        this.words = words;
        this.phrases = new PhraseWords(words, notes);
        this.voice = voice;
        this.meter = meter;
        this.known = known;
    }

    public Utterance text(Fraction from, Fraction to) {
        return switch (Stretch.kind(voice, from, to)) {
            case HOLD -> new Utterance(List.of(), words.say("hold"));
            case REST -> new Utterance(List.of(), words.say("rest"));
            case PLAY -> play(from, to);
        };
    }

    private Utterance play(Fraction from, Fraction to) {
        int overlapping = indexAfter(from);
        int end = indexFrom(to);
        int first = overlapping;
        while (first < end && carriesOn(first, from)) {
            first++;
        }
        if (hasTuplet(overlapping, end)) {
            return inValues(overlapping, first, end);
        }
        var said = first == overlapping ? fresh(first, end, from, to) : after(first, end);
        return known.alone() && isHeldOver(end) ? said.playing(heldOver(said.played(), end)) : said;
    }

    private Utterance fresh(int first, int end, Fraction from, Fraction to) {
        var groups = new Groups(words, voice, meter, first, end);
        if (!groups.isOne()) {
            return known.alone() && groups.isCounted()
                    ? new Utterance(List.of(), groups.said(phrases, false))
                    : inValues(first, first, end);
        }
        String rhythm = new RhythmWords(words, voice).of(first, groups.endOfNotes());
        boolean plain = groups.isNoteABeat(to);
        boolean usual = known.bar()
                || known.usual()
                || known.beat().equals(Optional.of(rhythm))
                        && groups.endOfNotes() == end
                        && Stretch.isBeat(from, to, meter);
        return new Utterance(
                plain || usual ? List.of() : List.of(rhythm),
                groups.plain(phrases),
                groups.isEven() && groups.endOfNotes() - first > 1
                        ? words.evenly(voice.elements().get(first).value())
                        : Optional.empty(),
                extent(end - first == 1, plain));
    }

    private static Extent extent(boolean one, boolean plain) {
        return !one ? Extent.OTHER : plain ? Extent.FILLING : Extent.ONE;
    }

    /** What comes in after something that carries on. */
    private Utterance after(int first, int end) {
        var last = voice.elements().get(first - 1);
        boolean rests = first < end && voice.elements().get(first) instanceof Rest && last instanceof Chord;
        int next = rests ? first + 1 : first;
        var groups = new Groups(words, voice, meter, next, end);
        if (next == end
                || !known.alone()
                || !groups.isCounted()
                || words.count(until(last), meter).isEmpty()) {
            return inValues(first - 1, first, end);
        }
        String lead = rests ? words.say("hold.rest", lead(last)) : lead(last);
        return new Utterance(List.of(), words.say("next", lead, groups.said(phrases, true)));
    }

    /** With note values in place of counts: in tuplets, and where nobody has a word for a moment. */
    private Utterance inValues(int overlapping, int first, int end) {
        var rhythm = new RhythmWords(words, voice);
        String values = first == overlapping
                ? rhythm.spoken(first, end)
                : words.say("then", lead(voice.elements().get(first - 1)), rhythm.of(first, end));
        var groups = new Groups(words, voice, meter, first, end);
        if (first == end || !groups.isStruck()) {
            return new Utterance(List.of(), values);
        }
        var said = new Utterance(List.of(values), groups.struck(phrases));
        return hasTuplet(overlapping, end) ? new Utterance(List.of(), said.joined(words)) : said;
    }

    private boolean hasTuplet(int first, int end) {
        return voice.tuplets().stream().anyMatch(group -> group.first() < end && group.last() >= first);
    }

    /** Whether an element began before, or is tied to what did, so that it is told as a length of time gone on. */
    private boolean carriesOn(int index, Fraction from) {
        var element = voice.elements().get(index);
        boolean inTuplet = voice.tuplets().stream().anyMatch(group -> group.first() <= index && index <= group.last());
        return element.onset().isBefore(from) || (RhythmWords.isHeld(element) && !inTuplet);
    }

    private String lead(Element last) {
        String what = last instanceof Chord ? "hold" : "rest";
        return words.count(until(last), meter)
                .map(count -> words.say(what + ".until", count))
                .orElseGet(() -> words.say(what + ".on"));
    }

    private static Fraction until(Element element) {
        return element.onset().plus(element.length());
    }

    /** Whether what is struck last goes on after the stretch under a tie. */
    private boolean isHeldOver(int end) {
        return voice.elements().get(end - 1) instanceof Chord chord
                && chord.heads().stream().allMatch(Head::tiedTo);
    }

    private String heldOver(String played, int end) {
        if (end == voice.elements().size()) {
            return words.say("detail", played, words.say("held.over"));
        }
        var at = voice.elements().get(end).onset();
        var beats = meter.beatStarts();
        boolean numbered = beats.contains(at) && meter.beats().stream().allMatch(counts -> counts == 1);
        var next = numbered
                ? Optional.of(words.say("beat", String.valueOf(1 + beats.indexOf(at))))
                : words.count(at, meter);
        return next.map(count -> words.say("detail", played, words.say("held.into", count)))
                .orElse(played);
    }

    /** The first element that ends after this time. */
    private int indexAfter(Fraction at) {
        return (int) voice.elements().stream()
                .takeWhile(element -> !element.onset().plus(element.length()).isAfter(at))
                .count();
    }

    /** The first element that does not begin before this time. */
    private int indexFrom(Fraction at) {
        return (int) voice.elements().stream()
                .takeWhile(element -> element.onset().isBefore(at))
                .count();
    }
}
