package groundbass.walkthrough.words;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Tempo;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** The words that sentences are made of, in one language. */
public final class Wording {
    private static final String PREFIX = "walkthrough.";
    private static final int LAST_NUMBER_IN_WORDS = 12;

    /** A root that means one note in this language and another on a sheet, so that the sheet is always named. */
    private static final String NAMED_ALIKE = "B";

    private final Messages messages;
    private final String naming;
    private final boolean again;
    private final Set<String> written = new HashSet<>();

    /** Words that know nothing of what was said before. */
    public Wording(Messages messages, Naming naming) {
        this(messages, naming, true);
    }

    /** @param again whether what stands on the sheet is said beside each name of a chord, or once of each */
    public Wording(Messages messages, Naming naming, boolean again) {
        this.again = again;
        this.messages = messages;
        this.naming = naming.isSpokenIn(messages.locale()) ? naming.word() + "." : "";
    }

    /** The text of a key; where the chosen naming has words of its own for it, those. */
    public String say(String key, Object... args) {
        return messages.say(PREFIX + (messages.has(PREFIX + naming + key) ? naming : "") + key, args);
    }

    /** Whether this language has words of its own for a key. */
    public boolean has(String key) {
        return messages.has(PREFIX + key);
    }

    /** What another package has to say, in this language. */
    public String said(Message message) {
        return messages.say(message);
    }

    /** A plural form that a number chooses and that may name it. */
    public String counted(String key, int count) {
        return say(key, count, number(count));
    }

    public String number(int count) {
        return count >= 1 && count <= LAST_NUMBER_IN_WORDS ? say("number." + count) : String.valueOf(count);
    }

    /** {@code a, b and c}. */
    public String list(List<String> items) {
        var last = items.get(items.size() - 1);
        return items.stream()
                .limit(items.size() - 1L)
                .reduce((one, two) -> say("list.more", one, two))
                .map(all -> say("list.two", all, last))
                .orElse(last);
    }

    /** {@code a, b, then c}. */
    public String inTurn(List<String> items) {
        var last = items.get(items.size() - 1);
        return items.stream()
                .limit(items.size() - 1L)
                .reduce((one, two) -> say("list.more", one, two))
                .map(all -> say("list.then", all, last))
                .orElse(last);
    }

    /** {@code F sharp}; in German {@code Fis}, with the names that are not built by rule under keys of their own. */
    public String name(NoteName name) {
        if (messages.has(PREFIX + "note." + name)) {
            return say("note." + name);
        }
        String form =
                switch (name.alteration()) {
                    case -2 -> "doubleflat";
                    case -1 -> "flat";
                    case 1 -> "sharp";
                    case 2 -> "doublesharp";
                    default -> "natural";
                };
        return say("note." + form, name.letter().toString());
    }

    /** {@code over Bm7}. */
    public String over(ChordSymbol symbol) {
        return symbol instanceof Chord chord ? say("over", chord(chord)) : say("nochord");
    }

    /** By the names that notes have in this language, with what stands on the sheet where that is another letter. */
    public String chord(Chord chord) {
        String named = root(chord.root())
                + chord.quality().suffix()
                + chord.bass().map(bass -> "/" + root(bass)).orElse("");
        boolean always = named.startsWith(NAMED_ALIKE) || again;
        boolean known = !written.add(named) && !always;
        return known || named.equals(chord.toString()) ? named : say("chord.written", named, chord.toString());
    }

    private String root(NoteName root) {
        return has("root." + root) ? say("root." + root) : root.toString();
    }

    String key(Key key) {
        String tonic = name(key.tonic());
        return say("mode." + key.mode(), tonic, tonic.toLowerCase(messages.locale()));
    }

    /** So many notes of one value: {@code two sixteenths}. */
    public String notes(NoteValue value, int count) {
        return dotted(value, counted((value.dots() == 1 ? "dotted." : "value.") + word(value.base()), count));
    }

    /** {@code in eighths}, where that is said of a value. */
    public Optional<String> evenly(NoteValue value) {
        String key = "evenly." + word(value.base());
        return value.dots() == 0 && has(key) ? Optional.of(say(key)) : Optional.empty();
    }

    public String rests(NoteValue value, int count) {
        return dotted(value, counted((value.dots() == 1 ? "rest.dotted." : "rest.value.") + word(value.base()), count));
    }

    /** {@code 96 beats per minute}; what a beat is where the meter does not tell. */
    public String tempo(Tempo tempo, Meter meter) {
        int perMinute = tempo.perMinute();
        boolean plain = tempo.beat().equals(Fraction.of(1, meter.unit()))
                && meter.beats().stream().allMatch(counts -> counts == 1);
        String beats = plain
                ? counted("tempo.beats", perMinute)
                : valueOf(tempo.beat())
                        .map(value -> beats(value, perMinute))
                        .orElseGet(() -> counted("tempo.beats", perMinute));
        return say("tempo", beats);
    }

    private String beats(NoteValue value, int perMinute) {
        String key = (value.dots() == 1 ? "tempo.dotted." : "tempo.value.") + word(value.base());
        return has(key) ? counted(key, perMinute) : notes(value, perMinute);
    }

    /** A moment as players say it, where they have a word for it. */
    public Optional<String> count(Fraction at, Meter meter) {
        return Count.at(at, meter).map(Count::toString);
    }

    private String dotted(NoteValue value, String text) {
        return value.dots() == 2 ? say("twicedotted", text) : text;
    }

    private static Optional<NoteValue> valueOf(Fraction length) {
        return Arrays.stream(Base.values())
                .flatMap(base -> Stream.of(NoteValue.of(base), NoteValue.dotted(base)))
                .filter(value -> value.length().equals(length))
                .findFirst();
    }

    private static String word(Base base) {
        return base.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
