package groundbass.linetext.problem;

import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.TypedNumbers;
import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.score.Place;
import groundbass.score.Tempo;
import groundbass.score.Tuning;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What can be wrong with the settings at the head or before a bar. */
public final class HeadProblems {
    private static final Pattern MINOR = Pattern.compile("([A-G][#b]?)(m|mi|min)");

    private HeadProblems() {}

    public static Remark noValue(Span span, Keyword word) {
        return Mistake.NO_VALUE.at(span, word);
    }

    public static Remark badText(Span span, Keyword word, int most) {
        return Mistake.BAD_SETTING_TEXT.at(span, word, most);
    }

    public static Remark unknownForm(Span span, int known) {
        return Mistake.UNKNOWN_FORM.at(span, known);
    }

    public static Remark noTonic(Token found) {
        return Mistake.NO_TONIC
                .at(found.span(), found.text())
                .suggesting(minor(found.text()).or(() -> GermanNames.asWritten(found.text())));
    }

    /** {@code Am} and {@code F#min} for {@code A minor} and {@code F# minor}. */
    private static Optional<String> minor(String text) {
        var minor = MINOR.matcher(text);
        return minor.matches() ? Optional.of(minor.group(1) + " " + Mode.MINOR) : Optional.empty();
    }

    public static Remark noMode(Span span, NoteName tonic, List<String> modes) {
        return Mistake.NO_MODE.at(span, tonic, String.join(" ", modes)).suggesting(tonic + " major", tonic + " minor");
    }

    public static Remark noSignature(Span span, NoteName tonic, Mode mode) {
        var others = Stream.of(-1, 0, 1)
                .flatMap(alteration -> Arrays.stream(Letter.values()).map(letter -> new NoteName(letter, alteration)))
                .filter(name -> name.pitchClass() == tonic.pitchClass() && Key.isWritable(name, mode))
                .map(name -> name + " " + mode);
        return Mistake.NO_SIGNATURE
                .at(span, tonic + " " + mode, Key.MOST_FIFTHS)
                .suggesting(others);
    }

    public static Remark tempoOutOfRange(Span span, int found) {
        return Mistake.TEMPO_OUT_OF_RANGE.at(span, found, Tempo.SLOWEST, Tempo.FASTEST);
    }

    public static Remark slowingWithoutTo(Span span) {
        return Mistake.SLOWING_WITHOUT_TO.at(span);
    }

    public static Remark newWhat(Token found, List<String> places) {
        return Mistake.NEW_WHAT
                .at(found.span(), found.text(), String.join(" ", places))
                .suggesting(Nearest.to(found.text(), places));
    }

    public static Remark unknownBeat(Span span, String found, List<String> names) {
        return Mistake.UNKNOWN_BEAT.at(span, found, String.join(" ", names)).suggesting(Nearest.to(found, names));
    }

    public static Remark unknownFeel(Span span) {
        return Mistake.UNKNOWN_FEEL.at(span);
    }

    public static Remark badSwing(Span span) {
        return Mistake.BAD_SWING.at(span).suggesting("swing 8ths 2:1");
    }

    public static Remark fretsOutOfRange(Span span) {
        return Mistake.FRETS_OUT_OF_RANGE.at(span, Place.Fretted.MOST_FRETS);
    }

    public static Remark noNumber(Span span, Keyword word) {
        return Mistake.NO_NUMBER.at(span, word);
    }

    public static Remark badMeter(Token found) {
        return Mistake.BAD_METER
                .at(found.span())
                .suggesting(TypedNumbers.whole(found.text())
                        .filter(counts -> counts >= 2 && counts <= 6)
                        .map(counts -> counts + "/4"));
    }

    public static Remark badGroups(Span span, int counts) {
        return Mistake.BAD_GROUPS.at(span, counts);
    }

    public static Remark badString(Token found) {
        return Mistake.BAD_STRING.at(found.span(), found.text());
    }

    public static Remark tooManyStrings(Span span) {
        return Mistake.TOO_MANY_STRINGS.at(span, Tuning.MOST_STRINGS);
    }

    public static Remark saidTwice(Span span, Keyword word, Span first) {
        return Mistake.SETTING_SAID_TWICE.at(span, word, first.line());
    }

    public static Remark onlyAtHead(Span span, Keyword word) {
        return Mistake.ONLY_AT_HEAD.at(span, word);
    }
}
