package groundbass.linetext.read;

import groundbass.linetext.problem.HeadProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.problem.TextProblems;
import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.Setting;
import groundbass.remark.Span;
import groundbass.score.Changes;
import groundbass.score.Changes.Fresh;
import groundbass.score.Feel;
import groundbass.score.Header;
import groundbass.score.Place;
import groundbass.score.Swing;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Reads the value of one setting. Where it cannot, it says why and there is no setting. */
public final class SettingReader {
    /** The version of the form that this program reads and prints. */
    public static final int FORM = 1;

    private static final List<String> MODES =
            Arrays.stream(Mode.values()).map(Mode::toString).toList();
    private static final List<String> TECHNIQUES =
            Arrays.stream(Technique.values()).map(Technique::word).toList();
    private static final List<String> PLACES =
            Arrays.stream(Fresh.values()).map(Fresh::word).toList();

    private final Keyword word;
    private final Tokens tokens;
    private final Problems problems;

    SettingReader(Keyword word, Tokens tokens, Problems problems) {
        this.word = word;
        this.tokens = tokens;
        this.problems = problems;
    }

    /** A setting whose value is all that is left of its line. */
    static Optional<Setting> ofText(Keyword word, Span line, Token text, Problems problems) {
        if (text.text().isEmpty()) {
            problems.add(HeadProblems.noValue(line, word));
            return Optional.empty();
        }
        int most = Header.LONGEST_TEXT;
        if (text.text().length() > most || text.text().chars().anyMatch(Character::isISOControl)) {
            problems.add(HeadProblems.badText(text.span(), word, most));
            return Optional.empty();
        }
        return switch (word) {
            case TITLE -> Optional.of(Setting.ofHead(word, line, head -> head.withTitle(text.text())));
            case COMPOSER -> Optional.of(Setting.ofHead(word, line, head -> head.withComposer(text.text())));
            case RIGHTS -> Optional.of(Setting.ofHead(word, line, head -> head.withRights(text.text())));
            case SECTION -> Optional.of(Setting.ofBar(word, line, changes -> changes.withSection(text.text())));
            case FORM,
                    KEY,
                    METER,
                    TEMPO,
                    FEEL,
                    STRINGS,
                    FRETS,
                    STYLE,
                    SLOWING,
                    REPEAT,
                    ENDING,
                    SEGNO,
                    CODA,
                    TO,
                    FINE,
                    DA,
                    DAL,
                    NEW,
                    BAR -> throw new IllegalArgumentException("its value is no free text: " + word);
        };
    }

    Optional<Setting> read() {
        if (tokens.atEnd()) {
            problems.add(HeadProblems.noValue(tokens.whole(), word));
            return Optional.empty();
        }
        var setting = value();
        if (setting.isPresent() && !tokens.atEnd()) {
            var extra = tokens.take().orElseThrow();
            problems.add(TextProblems.leftOver(extra.span(), extra.text()));
        }
        return setting;
    }

    private Optional<Setting> value() {
        return switch (word) {
            case FORM -> form();
            case KEY -> key().map(key -> both(head -> head.with(key), changes -> changes.with(key)));
            case METER ->
                new MeterReader(tokens, problems)
                        .read()
                        .map(meter -> both(head -> head.with(meter), changes -> changes.with(meter)));
            case TEMPO -> tempo();
            case FEEL -> feel().map(feel -> both(head -> head.with(feel), changes -> changes.with(feel)));
            case STRINGS ->
                new TuningReader(tokens, problems)
                        .read()
                        .map(tuning -> Setting.ofHead(word, tokens.whole(), head -> head.with(tuning)));
            case FRETS -> frets();
            case STYLE -> style().map(style -> both(head -> head.with(style), changes -> changes.with(style)));
            case SLOWING -> slowing();
            case NEW -> fresh();
            case TITLE, COMPOSER, RIGHTS, SECTION, REPEAT, ENDING, SEGNO, CODA, TO, FINE, DA, DAL, BAR ->
                throw new IllegalArgumentException("no setting of words: " + word);
        };
    }

    private Setting both(UnaryOperator<Header> head, UnaryOperator<Changes> change) {
        return new Setting(word, tokens.whole(), head, (changes, meter) -> change.apply(changes));
    }

    private Optional<Setting> form() {
        var version = number();
        if (version.isPresent() && version.get() != FORM) {
            problems.add(HeadProblems.unknownForm(tokens.last(), FORM));
        }
        return version.map(number -> Setting.ofHead(word, tokens.whole(), head -> head));
    }

    private Optional<Key> key() {
        var typed = tokens.take().orElseThrow();
        var tonic = NoteName.parse(typed.text());
        if (tonic.isEmpty()) {
            problems.add(HeadProblems.noTonic(typed));
            return Optional.empty();
        }
        var mode = tokens.take();
        if (mode.isEmpty()) {
            problems.add(HeadProblems.noMode(tokens.here(), tonic.get(), MODES));
            return Optional.empty();
        }
        int known = MODES.indexOf(mode.get().text());
        if (known < 0) {
            problems.add(TextProblems.unknownMode(mode.get(), MODES));
            return Optional.empty();
        }
        return writable(typed.span().to(mode.get().span()), tonic.get(), Mode.values()[known]);
    }

    private Optional<Key> writable(Span span, NoteName tonic, Mode mode) {
        if (!Key.isWritable(tonic, mode)) {
            problems.add(HeadProblems.noSignature(span, tonic, mode));
            return Optional.empty();
        }
        return Optional.of(new Key(tonic, mode));
    }

    private Optional<Setting> tempo() {
        var perMinute = perMinute();
        if (perMinute.isEmpty()) {
            return Optional.empty();
        }
        int figure = perMinute.get();
        if (tokens.atEnd()) {
            return Optional.of(new Setting(
                    word,
                    tokens.whole(),
                    head -> head.with(new Tempo(figure, head.meter().pulse())),
                    (changes, meter) -> changes.with(new Tempo(figure, meter.pulse()))));
        }
        return BeatNames.read(tokens, problems)
                .map(beat -> new Tempo(figure, beat))
                .map(tempo -> both(head -> head.with(tempo), changes -> changes.with(tempo)));
    }

    private Optional<Integer> perMinute() {
        var figure = number();
        if (figure.isPresent() && (figure.get() < Tempo.SLOWEST || figure.get() > Tempo.FASTEST)) {
            problems.add(HeadProblems.tempoOutOfRange(tokens.last(), figure.get()));
            return Optional.empty();
        }
        return figure;
    }

    private Optional<Setting> slowing() {
        if (!tokens.takeWord("to")) {
            problems.add(HeadProblems.slowingWithoutTo(tokens.here()));
            return Optional.empty();
        }
        return perMinute().map(figure -> Setting.ofBar(word, tokens.whole(), changes -> changes.withSlowingTo(figure)));
    }

    private Optional<Setting> fresh() {
        var typed = tokens.take().orElseThrow();
        int known = PLACES.indexOf(typed.text());
        if (known < 0) {
            problems.add(HeadProblems.newWhat(typed, PLACES));
            return Optional.empty();
        }
        return Optional.of(Setting.ofBar(word, tokens.whole(), changes -> changes.with(Fresh.values()[known])));
    }

    private Optional<Feel> feel() {
        Optional<Swing> swing = Optional.empty();
        if (tokens.takeWord("swing")) {
            swing = swing();
            if (swing.isEmpty()) {
                return Optional.empty();
            }
        } else if (!tokens.takeWord("straight") && !tokens.sees(token -> token.isWord("half-time"))) {
            problems.add(HeadProblems.unknownFeel(tokens.here()));
            return Optional.empty();
        }
        return Optional.of(new Feel(swing, tokens.takeWord("half-time")));
    }

    private Optional<Swing> swing() {
        var start = tokens.here();
        boolean eighths = tokens.takeWord("8ths");
        boolean sixteenths = !eighths && tokens.takeWord("16ths");
        var ratio = tokens.take().map(Token::text).orElse("");
        int colon = ratio.indexOf(':');
        var first = TypedNumbers.whole(ratio.substring(0, Math.max(0, colon)));
        var second = TypedNumbers.whole(ratio.substring(colon + 1));
        boolean readable = (eighths || sixteenths)
                && first.isPresent()
                && second.isPresent()
                && Swing.isRatio(first.get(), second.get());
        if (!readable) {
            problems.add(HeadProblems.badSwing(start.to(tokens.last())));
            return Optional.empty();
        }
        var unit = eighths ? Swing.EIGHTHS : Swing.SIXTEENTHS;
        return Optional.of(new Swing(unit, first.get(), second.get()));
    }

    private Optional<Setting> frets() {
        var number = number();
        if (number.isPresent() && (number.get() < 1 || number.get() > Place.Fretted.MOST_FRETS)) {
            problems.add(HeadProblems.fretsOutOfRange(tokens.last()));
            return Optional.empty();
        }
        return number.map(frets -> Setting.ofHead(word, tokens.whole(), head -> head.withFrets(frets)));
    }

    private Optional<Technique> style() {
        var typed = tokens.take().orElseThrow();
        int known = TECHNIQUES.indexOf(typed.text());
        if (known < 0) {
            problems.add(TextProblems.unknownStyle(typed, TECHNIQUES));
            return Optional.empty();
        }
        return Optional.of(Technique.values()[known]);
    }

    private Optional<Integer> number() {
        var here = tokens.here();
        var typed = tokens.take();
        var number = typed.flatMap(token -> TypedNumbers.whole(token.text()));
        if (number.isEmpty()) {
            problems.add(HeadProblems.noNumber(here, word));
        }
        return number;
    }
}
