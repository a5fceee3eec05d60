package groundbass.linetext;

import java.util.List;
import java.util.Random;

/** Spoils a valid text the way fingers, clipboards and old files do, the same for a seed. */
public final class BadTexts {
    private static final List<String> PIECES = List.of(
            "bar",
            "bar 3 = bar 1 counts 2-3",
            "bar 0",
            "bar 2 until 2&",
            "1",
            "2&",
            "9-2",
            "1-99",
            "E5",
            "E58",
            "Ex",
            "s9f1",
            "hold",
            "E hold",
            "rest*3",
            "*0",
            "*999999",
            "+",
            ",",
            "=",
            "\"",
            "\u201C",
            "#",
            "  # x",
            "until",
            "until end",
            "until 2 1/3",
            "slide in",
            "bend",
            "bend 9/9",
            "hammer from 99",
            "harmonic at 0",
            "as Q",
            "with 7",
            "repeat start",
            "repeat end x99",
            "ending 2",
            "ending end",
            "meter 7/8 (2+2+4)",
            "meter 32/16",
            "tempo 0",
            "tempo 96 1/0",
            "strings",
            "strings E E E",
            "strings E=",
            "strings Q",
            "frets 0",
            "style nothing",
            "form 2",
            "slowing to 72",
            "over",
            "over Q7, C at 9",
            "over none",
            "section",
            "title",
            "\t",
            "\u0000",
            "\uFEFF",
            "\u2028",
            "\uD800",
            "\u266D",
            "99999999999999999999",
            "\u0661",
            "2 1/3",
            "1/999999");

    private final Random random;

    public BadTexts(long seed) {
        random = new Random(seed);
    }

    public String spoil(String text) {
        var spoiled = text;
        for (int i = 0; i <= random.nextInt(4); i++) {
            spoiled = once(spoiled);
        }
        return spoiled;
    }

    private String once(String text) {
        int at = random.nextInt(text.length() + 1);
        int to = Math.min(text.length(), at + random.nextInt(5));
        return switch (random.nextInt(6)) {
            case 0 -> text.substring(0, at) + (char) random.nextInt(0x300) + text.substring(to);
            case 1 -> text.substring(0, at) + text.substring(to);
            case 2 -> text.substring(0, at) + piece() + text.substring(to);
            case 3 -> swapLines(text);
            case 4 -> withoutLine(text);
            default -> text.substring(0, at) + "\n" + piece() + " " + piece() + "\n" + text.substring(to);
        };
    }

    private String piece() {
        return PIECES.get(random.nextInt(PIECES.size()));
    }

    private String swapLines(String text) {
        var lines = text.split("\n", -1);
        int one = random.nextInt(lines.length);
        int two = random.nextInt(lines.length);
        String kept = lines[one];
        lines[one] = lines[two];
        lines[two] = kept;
        return String.join("\n", lines);
    }

    private String withoutLine(String text) {
        var lines = text.split("\n", -1);
        lines[random.nextInt(lines.length)] = "";
        return String.join("\n", lines);
    }
}
