package groundbass.walkthrough;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Reads the places that an English step tells, as somebody does who has the string in mind that was named last, and where
 * each note was: {@code G (E string, fret 3); a dead note; G again}.
 */
final class ToldPlaces {
    private static final String NAME = "[A-G](?: (?:double )?(?:sharp|flat))?";
    private static final String STRING = "(?:" + NAME + " string|string \\d+)";
    private static final Pattern PLACE = Pattern.compile("(?:a dead note|dead notes)(?: \\((?<dead>" + STRING + ")\\))?"
            + "|the open (?<open>" + NAME + " string)"
            + "|open (?<openname>" + NAME + ") \\((?<openat>" + STRING + ")\\)"
            + "|(?<again>" + NAME + ") again"
            + "|(?<names>" + NAME + "(?:(?:,|, then| and) " + NAME + ")*) \\((?:(?<at>" + STRING + "), )?"
            + "(?<frets>(?:frets? |touched)[^)]*)\\)");
    private static final Pattern FINGER = Pattern.compile(", (index|middle|ring|little) finger");
    private static final Pattern COUNTED = Pattern.compile(", (twice|(\\w+) times)(?:,.*)?\\.?$");
    private static final Pattern STROKES =
            Pattern.compile("(?:thumb|with) ((?:\\w+, )*\\w+ and \\w+) (?:on|finger play) ");
    private static final List<String> NUMBERS = List.of(
            "", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve");

    private final Map<String, String> known = new HashMap<>();
    private String string = "";

    List<String> of(String text) {
        var told = new ArrayList<String>();
        for (String phrase : text.split("; |\\. ")) {
            var places = phrase(phrase);
            for (int i = 0; i < times(phrase, places.size()); i++) {
                told.addAll(places);
            }
        }
        return told;
    }

    private List<String> phrase(String phrase) {
        var places = new ArrayList<String>();
        var match = PLACE.matcher(phrase);
        while (match.find()) {
            places(match).forEach(places::add);
        }
        return places;
    }

    private Stream<String> places(Matcher match) {
        if (match.group("again") != null) {
            return Stream.of(known.get(match.group("again")));
        }
        string = Stream.of("dead", "open", "openat", "at")
                .map(match::group)
                .filter(named -> named != null)
                .findFirst()
                .orElse(string);
        if (match.group("names") != null) {
            return fretted(match.group("names").split(", then |, | and "), match.group("frets"));
        }
        String open = match.group("open") == null
                ? match.group("openname")
                : match.group("open").replace(" string", "");
        if (open == null) {
            return Stream.of(string);
        }
        known.put(open, string + ", open");
        return Stream.of(string + ", open");
    }

    /** {@code fret 5}, {@code frets 5 and 7}; the finger that stops a string is no part of its place. */
    private Stream<String> fretted(String[] names, String frets) {
        String plain = FINGER.matcher(frets).replaceAll("");
        var places = plain.startsWith("frets ")
                ? Arrays.stream(plain.substring("frets ".length()).split(", | and "))
                        .map(fret -> string + ", fret " + fret)
                        .toList()
                : List.of(string + ", " + plain);
        for (int i = 0; i < places.size(); i++) {
            known.put(names[names.length - places.size() + i], places.get(i));
        }
        return places.stream();
    }

    /** How often what a phrase names is played: so many times, or once with each stroke of one place. */
    private static int times(String phrase, int places) {
        var strokes = STROKES.matcher(phrase);
        if (places == 1 && strokes.find()) {
            return strokes.group(1).split(", | and ").length;
        }
        var counted = COUNTED.matcher(phrase);
        if (!counted.find()) {
            return 1;
        }
        return counted.group(1).equals("twice") ? 2 : NUMBERS.indexOf(counted.group(2));
    }
}
