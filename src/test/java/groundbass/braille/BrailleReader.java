package groundbass.braille;

import groundbass.score.Fraction;
import groundbass.theory.Letter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads rows of music braille as somebody does who knows the tables, and nothing of the program that wrote them: pitches
 * from octave marks and steps, accidentals from signature and bar, values from what fills the bar.
 */
final class BrailleReader {
    private static final List<String> SHAPES = List.of("YZ&=(!)", "NOPQRST", "?:$]\\[W", "DEFGHIJ");
    private static final List<String> OCTAVES = List.of("@@", "@", "^", "_", "\"", ".", ";", ",", ",,");
    private static final String RESTS = "MUVX";
    private static final String INTERVALS = "/+#903-";
    private static final String STRINGS = "ABL1K2'";
    private static final String SHARPS = "FCGDAEB";

    private static final String SIGNATURE = "(?:[%<*]{1,3}|#[A-J]+[%<*])?(?:#[A-J]+[0-9]+)?";
    /** Words that stand behind a bar; the random lines have no others. */
    private static final String LATE =
            "(?:>(?:PP|P|MP|MF|FF|FINE|F|C|D|TO|CODA|'_\\?|QUIET|V|EVEN|'#[A-J]+|TIMES|[DS]'[CS])'?)+";

    private static final Pattern BEHIND_A_BAR = Pattern.compile(LATE + "(?: (?!AL )|$)");

    private static final String LONG_WORDS = "(?:<7)?>[A-Z]+|>[DS]'[CS]'";

    private static final Pattern BAR_SIGN = Pattern.compile("<7|<2|<K'?|<L|<B|<'|>[34](?![A-Z])");
    private static final Pattern FRET = Pattern.compile(",>3|>>|>-+[/+#903]?|>[/+#90]");
    private static final Pattern ROLL = Pattern.compile(">KK?(?![A-Z])");
    private static final Pattern WORD =
            Pattern.compile("(?:>D'[CS]'|>'#[A-J]+|>'_\\?|>[A-Z]+(?:#[A-J]+(?:_/#[A-J]+)?)?)'?");
    private static final Pattern BEFORE_NOTE = Pattern.compile("_[0-9]+'|8|\\.8|_8|;8|\"8|2|[%<*]*6|\\*L");
    private static final Pattern STRING = Pattern.compile("%([ABL1K2'])");
    private static final Pattern REMINDER = Pattern.compile(",'([%<*]+),'");
    private static final Pattern ADDED = Pattern.compile("\"(?=[%<*])");
    private static final Pattern ACCIDENTAL = Pattern.compile("%%|<<|[%<*]");
    private static final Pattern OCTAVE = Pattern.compile("@@|,,|[@^_\".;,]");
    private static final Pattern BEHIND = Pattern.compile("@A|[ABL1]|K|,'");

    /** One note: its step on the staff from C0, how it is altered, on which string, whether it is held on. */
    record Tone(int step, int alteration, int string, boolean tied) {}

    /** What stands at one moment; a rest has no tones. */
    record Moment(int shape, boolean smaller, int dots, List<Tone> tones) {}

    /** @param voices as they come: the lower first */
    record ReadBar(List<List<Moment>> voices) {}

    private final Map<Character, Integer> key = new HashMap<>();
    private final List<Tone> held = new ArrayList<>();
    private Fraction length;
    private Optional<Integer> last = Optional.empty();
    private int string;

    BrailleReader(int fifths, Fraction length) {
        setKey(fifths);
        this.length = length;
    }

    private void setKey(int fifths) {
        key.clear();
        for (int i = 0; i < Math.abs(fifths); i++) {
            key.put(SHARPS.charAt(fifths > 0 ? i : 6 - i), fifths > 0 ? 1 : -1);
        }
    }

    /**
     * @param rows of music alone, in ASCII braille
     * @param squeezed by bar, voice and element, what part of its value each lasts: how many notes go in the time of how
     *     many a tuplet's figure does not say
     */
    List<ReadBar> read(List<String> rows, List<List<List<Fraction>>> squeezed) {
        var bars = new ArrayList<ReadBar>();
        var pending = new StringBuilder();
        boolean words = false;
        for (String token : joined(rows).split(" ")) {
            if (words) {
                words = !token.endsWith(">");
            } else if (token.matches(LATE) && !token.matches(">[DS]'[CS]'")) {
                last = Optional.empty();
            } else if (token.matches(LONG_WORDS)) {
                words = true;
                last = Optional.empty();
            } else if (token.equals("+") || token.equals("+L")) {
                last = Optional.empty();
            } else if (token.matches(SIGNATURE)) {
                change(token);
            } else if (token.endsWith("\"")) {
                pending.append(token, 0, token.length() - 1);
            } else {
                bars.add(bar(pending.append(token).toString(), squeezed.get(bars.size())));
                pending.setLength(0);
            }
        }
        return bars;
    }

    /** Numbers and music hyphens at the ends of rows taken away; behind the sign of an in-accord there is none. */
    private static String joined(List<String> rows) {
        var text = new StringBuilder();
        for (String row : rows) {
            boolean numbered = row.startsWith("#");
            String music = numbered ? row.substring(row.indexOf(' ') + 1) : row.substring(2);
            boolean behind = BEHIND_A_BAR.matcher(music).lookingAt();
            boolean parted = behind || text.toString().endsWith("\"") && !music.split(" ")[0].matches(LONG_WORDS);
            boolean secondVoice = text.toString().endsWith("<>");
            if (parted) {
                text.setLength(text.length() - (behind ? 0 : 1));
            } else if (text.length() > 0 && !secondVoice) {
                text.append(' ');
            }
            text.append(music);
        }
        return text.toString();
    }

    private void change(String token) {
        var figures = Pattern.compile("(#[A-J]+)([0-9]+)$").matcher(token);
        String signs = token;
        if (figures.find()) {
            length = Fraction.of(number(figures.group(1)), Integer.parseInt(figures.group(2)));
            signs = token.substring(0, figures.start());
        }
        if (!signs.isEmpty()) {
            int count = signs.startsWith("#") ? number(signs) : signs.length();
            char sign = signs.charAt(signs.length() - 1);
            setKey(sign == '*' ? 0 : sign == '%' ? count : -count);
        }
        last = Optional.empty();
    }

    private static int number(String cells) {
        int value = 0;
        for (char each : cells.toCharArray()) {
            value = each >= 'A' && each <= 'J' ? value * 10 + "JABCDEFGHI".indexOf(each) : value;
        }
        return value;
    }

    private ReadBar bar(String text, List<List<Fraction>> squeezed) {
        var voices = new ArrayList<List<Moment>>();
        var heldBefore = new ArrayList<>(held);
        held.clear();
        for (String voice : text.split("<>", 2)) {
            voices.add(new VoiceReader(voice, heldBefore).read(squeezed.get(voices.size())));
            if (text.contains("<>")) {
                last = Optional.empty();
            }
        }
        return new ReadBar(voices);
    }

    /** One voice in one bar. */
    private final class VoiceReader {
        private final String text;
        private final List<Tone> heldInto;
        private final Map<Integer, Integer> altered = new HashMap<>();
        private final List<int[]> values = new ArrayList<>();
        private final List<List<Tone>> tones = new ArrayList<>();
        private final Map<Integer, Boolean> told = new HashMap<>();
        private int at;
        private boolean grace;
        private int saidString;
        private Optional<Integer> octave = Optional.empty();
        private Optional<Integer> alteration = Optional.empty();

        VoiceReader(String text, List<Tone> heldInto) {
            this.text = text;
            this.heldInto = heldInto;
        }

        List<Moment> read(List<Fraction> squeezed) {
            while (at < text.length()) {
                step();
            }
            return decided(squeezed);
        }

        private Optional<Matcher> take(Pattern pattern) {
            var matcher = pattern.matcher(text).region(at, text.length());
            if (!matcher.lookingAt()) {
                return Optional.empty();
            }
            at = matcher.end();
            return Optional.of(matcher);
        }

        private boolean takes(String sign) {
            boolean there = text.startsWith(sign, at);
            at += there ? sign.length() : 0;
            return there;
        }

        private void step() {
            if (values.isEmpty() && take(Pattern.compile("#[0-9-]+'?")).isPresent()) {
                return;
            }
            if (takes("^<1")) {
                told.put(values.size(), false);
            } else if (takes(",<1")) {
                told.put(values.size(), true);
            } else if (take(BAR_SIGN).isPresent()
                    || take(FRET).isPresent()
                    || take(ROLL).isPresent()) {
                return;
            } else if (take(WORD).isPresent()) {
                last = Optional.empty();
            } else if (takes("5")) {
                grace = true;
            } else if (takes("@C")) {
                hold(tones.get(tones.size() - 1).size() - 1);
            } else if (takes(".C")) {
                for (int i = 0; i < tones.get(tones.size() - 1).size(); i++) {
                    hold(i);
                }
            } else if (takes("C") || take(BEFORE_NOTE).isPresent()) {
                return;
            } else {
                pitchOrRest();
            }
        }

        private void hold(int tone) {
            var chord = new ArrayList<>(tones.get(tones.size() - 1));
            var each = chord.get(tone);
            chord.set(tone, new Tone(each.step(), each.alteration(), each.string(), true));
            tones.set(tones.size() - 1, chord);
            held.add(each);
        }

        private void pitchOrRest() {
            var string = take(STRING);
            if (string.isPresent()) {
                saidString = STRINGS.indexOf(string.get().group(1)) + 1;
                return;
            }
            take(ADDED);
            var sign = take(REMINDER).map(found -> found.group(1)).or(() -> take(ACCIDENTAL)
                    .map(Matcher::group));
            if (sign.isPresent()) {
                alteration = Optional.of(alterationOf(sign.get()));
                return;
            }
            char cell = text.charAt(at);
            if (RESTS.indexOf(cell) >= 0 || cell == '"' && RESTS.indexOf(text.charAt(at + 1)) >= 0) {
                at += cell == '"' ? 1 : 0;
                value(RESTS.indexOf(text.charAt(at)), List.of());
            } else if (!tones.isEmpty() && INTERVALS.indexOf(cell) >= 0) {
                interval(INTERVALS.indexOf(cell) + 1);
            } else if (SHAPES.stream().anyMatch(shape -> shape.indexOf(cell) >= 0)) {
                note(cell);
            } else if (take(BEHIND).isEmpty()) {
                var mark = take(OCTAVE);
                if (mark.isEmpty()) {
                    throw new IllegalStateException(text + " at " + at + ": " + text.substring(at));
                }
                octave = Optional.of(OCTAVES.indexOf(mark.get().group()));
            }
        }

        private int alterationOf(String sign) {
            int each = sign.charAt(0) == '%' ? 1 : sign.charAt(0) == '<' ? -1 : 0;
            return each * sign.length();
        }

        private void value(int shape, List<Tone> chord) {
            at++;
            int dots = 0;
            while (takes("'")) {
                dots++;
            }
            values.add(new int[] {shape, dots});
            tones.add(chord);
        }

        private void note(char cell) {
            int shape = 0;
            while (SHAPES.get(shape).indexOf(cell) < 0) {
                shape++;
            }
            int step = stepOf(SHAPES.get(shape).indexOf(cell));
            last = Optional.of(step);
            if (grace) {
                altered(step);
                at++;
                grace = false;
                return;
            }
            value(shape, List.of(tone(step, true)));
        }

        /** The nearer of two readings where no mark stands: a second or third, else a step inside the octave. */
        private int stepOf(int letter) {
            if (octave.isPresent()) {
                int marked = octave.get() * 7 + letter;
                octave = Optional.empty();
                return marked;
            }
            int before = last.orElseThrow(() -> new IllegalStateException("no octave: " + text + " at " + at));
            for (int step = before - 2; step <= before + 2; step++) {
                if (Math.floorMod(step, 7) == letter) {
                    return step;
                }
            }
            return before / 7 * 7 + letter;
        }

        private void interval(int steps) {
            at++;
            var chord = new ArrayList<>(tones.get(tones.size() - 1));
            int lowest = chord.get(0).step();
            int step = lowest + steps;
            if (octave.isPresent()) {
                step = octave.get() * 7 + Math.floorMod(step, 7);
                octave = Optional.empty();
            } else {
                while (step <= chord.get(chord.size() - 1).step()) {
                    step += 7;
                }
            }
            chord.add(tone(step, false));
            tones.set(tones.size() - 1, chord);
        }

        /** What a tie leads into, over a bar line the first moment, goes on as it was; a note has the string that was said last, an interval its own. */
        private Tone tone(int step, boolean written) {
            int said = saidString;
            saidString = 0;
            if (said == 0 && alteration.isEmpty()) {
                boolean first = values.size() == (written ? 0 : 1);
                for (var before : first ? List.of(held, heldInto) : List.of(held)) {
                    var held =
                            before.stream().filter(each -> each.step() == step).findFirst();
                    if (held.isPresent()) {
                        before.remove(held.get());
                        return held.get();
                    }
                }
            }
            string = written && said > 0 ? said : string;
            return new Tone(step, altered(step), written ? string : said, false);
        }

        private int altered(int step) {
            alteration.ifPresent(now -> altered.put(step, now));
            alteration = Optional.empty();
            char letter = Letter.values()[Math.floorMod(step, 7)].name().charAt(0);
            return altered.getOrDefault(step, key.getOrDefault(letter, 0));
        }

        /** One shape has one value all through the bar unless told; of several ways that of the larger values is taken. */
        private List<Moment> decided(List<Fraction> squeezed) {
            var fitting = new ArrayList<boolean[]>();
            for (int ways = 0; ways < 16; ways++) {
                var smaller = smaller(ways);
                if (sum(smaller, squeezed).equals(length)
                        && fitting.stream().noneMatch(each -> java.util.Arrays.equals(each, smaller))) {
                    fitting.add(smaller);
                }
            }
            var taken = fitting.size() == 1 ? fitting.get(0) : smaller(0);
            boolean silent = values.size() == 1 && tones.get(0).isEmpty();
            var moments = new ArrayList<Moment>();
            for (int i = 0; i < values.size(); i++) {
                moments.add(new Moment(values.get(i)[0], taken[i] && !silent, values.get(i)[1], tones.get(i)));
            }
            return moments;
        }

        private boolean[] smaller(int ways) {
            var smaller = new boolean[values.size()];
            var now = new boolean[] {(ways & 1) > 0, (ways & 2) > 0, (ways & 4) > 0, (ways & 8) > 0};
            for (int i = 0; i < smaller.length; i++) {
                int shape = values.get(i)[0];
                now[shape] = told.getOrDefault(i, now[shape]);
                smaller[i] = now[shape];
            }
            return smaller;
        }

        private Fraction sum(boolean[] smaller, List<Fraction> squeezed) {
            var sum = Fraction.ZERO;
            for (int i = 0; i < smaller.length; i++) {
                var whole = Fraction.of(1, 1L << values.get(i)[0]).dividedBy(Fraction.of(smaller[i] ? 16 : 1));
                var dotted = whole.times(Fraction.of(2).minus(Fraction.of(1, 1L << values.get(i)[1])));
                sum = sum.plus(dotted.times(squeezed.get(i)));
            }
            return sum;
        }
    }
}
