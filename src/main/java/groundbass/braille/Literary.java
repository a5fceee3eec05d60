package groundbass.braille;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Words in uncontracted braille: English by the code of 2013, German by its basic alphabet
 * (rule: braille-literary-code).
 */
enum Literary {
    ENGLISH(
            ",",
            ";",
            Map.ofEntries(
                    Map.entry('.', "4"),
                    Map.entry(',', "1"),
                    Map.entry(':', "3"),
                    Map.entry(';', "2"),
                    Map.entry('?', "8"),
                    Map.entry('!', "6"),
                    Map.entry('(', "\"<"),
                    Map.entry(')', "\">"),
                    Map.entry('[', ".<"),
                    Map.entry(']', ".>"),
                    Map.entry('-', "-"),
                    Map.entry('/', "_/"),
                    Map.entry('\'', "'"),
                    Map.entry('"', ",7"),
                    Map.entry('&', "@&"),
                    Map.entry('+', "\"6"),
                    Map.entry('=', "\"7"),
                    Map.entry('%', ".0"),
                    Map.entry('*', "\"9"),
                    Map.entry('#', "_?"),
                    Map.entry('@', "@A"),
                    Map.entry('_', ".-"),
                    Map.entry('<', "@<"),
                    Map.entry('>', "@>"),
                    Map.entry('|', "_\\"),
                    Map.entry('~', "@9"),
                    Map.entry('\u201c', "8"),
                    Map.entry('\u201d', "0"),
                    Map.entry('\u00a9', "^C"),
                    Map.entry('\u00b0', "^J"),
                    Map.entry('\u00df', ".!"))),
    GERMAN(
            "",
            ",",
            Map.ofEntries(
                    Map.entry('.', "'"),
                    Map.entry(',', "1"),
                    Map.entry(':', "3"),
                    Map.entry(';', "2"),
                    Map.entry('?', "5"),
                    Map.entry('!', "6"),
                    Map.entry('(', "7"),
                    Map.entry(')', "7"),
                    Map.entry('[', ",7"),
                    Map.entry(']', ",7"),
                    Map.entry('-', "-"),
                    Map.entry('/', "\"1"),
                    Map.entry('\'', ","),
                    Map.entry('"', "8"),
                    Map.entry('&', "\"U"),
                    Map.entry('+', "@6"),
                    Map.entry('=', "@7"),
                    Map.entry('%', "#J0"),
                    Map.entry('*', ",9"),
                    Map.entry('#', "@#"),
                    Map.entry('@', "@>"),
                    Map.entry('_', "@_"),
                    Map.entry('|', "\"-"),
                    Map.entry('\u201c', "0"),
                    Map.entry('\u201d', "0"),
                    Map.entry('\u00a9', "7^C7"),
                    Map.entry('\u00b0', "@0"),
                    Map.entry('\u00e4', ">"),
                    Map.entry('\u00f6', "["),
                    Map.entry('\u00fc', "\\"),
                    Map.entry('\u00df', "!")));

    /** Of a character that neither code has. */
    private static final Cells UNKNOWN = Cells.of("=");

    /** The signs that English sets before a letter with an accent; German has one for all. */
    private static final Map<Character, String> ACCENTS = Map.of(
            '\u0308', "^3", '\u0301', "^/", '\u0300', "^*", '\u0302', "^%", '\u0303', "^]", '\u030a', "^$", '\u0327',
            "^&", '\u030c', "^+");

    private static final Map<Character, Character> ALIKE = Map.of(
            '\u2019', '\'', '\u2018', '\'', '\u201e', '"', '\u2013', '-', '\u2014', '-', '\u00a0', ' ', '\u2011', '-');

    private static final String FIGURES = "JABCDEFGHI";

    private final String capital;
    private final String letterSign;
    private final Map<Character, String> signs;

    Literary(String capital, String letterSign, Map<Character, String> signs) {
        this.capital = capital;
        this.letterSign = letterSign;
        this.signs = signs;
    }

    static Literary of(Locale locale) {
        return locale.getLanguage().equals("de") ? GERMAN : ENGLISH;
    }

    /** Everything of a text but how it is spaced. */
    Cells cells(String text) {
        var cells = Cells.NONE;
        boolean inNumber = false;
        String letters = Normalizer.normalize(text, Normalizer.Form.NFC)
                .strip()
                .replaceAll("\\s+", " ")
                .replace("\u2026", "...");
        for (int i = 0; i < letters.length(); i++) {
            char each = ALIKE.getOrDefault(letters.charAt(i), letters.charAt(i));
            boolean figure = each >= '0' && each <= '9';
            if (figure) {
                cells = cells.plus(inNumber ? Cells.NONE : BrailleSigns.NUMBER)
                        .plus(Cells.of(FIGURES.substring(each - '0', each - '0' + 1)));
                inNumber = true;
            } else {
                boolean looksLikeFigure = inNumber && each >= 'a' && each <= 'j';
                cells = cells.plus(looksLikeFigure ? Cells.of(letterSign) : Cells.NONE)
                        .plus(size(letters, i))
                        .plus(sign(each));
                inNumber = inNumber && (each == '.' || each == ',') && isFigure(letters, i + 1);
            }
        }
        return cells;
    }

    /** As words among notes have it: small letters, and dot 3 for the point of an abbreviation (rule: braille-dot-three). */
    Cells small(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        return this == ENGLISH ? cells(lower.replace('.', '\'')) : cells(lower);
    }

    /** In rows of a greatest width, broken between words, and in a word only where it is wider than a row. */
    List<Cells> rows(String text, int width) {
        return wrapped(
                List.of(text.strip().split("\\s+")).stream().map(this::cells).toList(), width);
    }

    static List<Cells> wrapped(List<Cells> words, int width) {
        var rows = new ArrayList<Cells>();
        var row = Cells.NONE;
        for (var word : words) {
            if (!row.isEmpty() && row.length() + 1 + word.length() > width) {
                rows.add(row);
                row = Cells.NONE;
            }
            row = row.isEmpty() ? word : row.plus(Cells.BLANK).plus(word);
            while (row.length() > width) {
                rows.add(row.first(width));
                row = row.from(width);
            }
        }
        rows.add(row);
        return rows;
    }

    private static boolean isFigure(String text, int at) {
        return at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9';
    }

    /** Before one capital letter, before several of a word, and before what is small again behind these. */
    private Cells size(String text, int at) {
        boolean several = isCapital(text, at - 1);
        if (isCapital(text, at)) {
            String first = isCapital(text, at + 1) ? capital.repeat(2) : capital;
            return several ? Cells.NONE : Cells.of(first);
        }
        boolean smallAgain = several && isCapital(text, at - 2) && Character.isLetter(text.charAt(at));
        return smallAgain ? Cells.of(capital).plus(Cells.DOT_3) : Cells.NONE;
    }

    private boolean isCapital(String text, int at) {
        boolean inside = at >= 0 && at < text.length();
        return inside && !capital.isEmpty() && Character.toLowerCase(text.charAt(at)) != text.charAt(at);
    }

    private Cells sign(char each) {
        if (each == ' ') {
            return Cells.BLANK;
        }
        char small = Character.toLowerCase(each);
        if (small >= 'a' && small <= 'z') {
            return Cells.of(String.valueOf(small));
        }
        return signs.containsKey(small) ? Cells.of(signs.get(small)) : accented(small);
    }

    private Cells accented(char letter) {
        String parts = Normalizer.normalize(String.valueOf(letter), Normalizer.Form.NFD);
        boolean known = parts.length() == 2
                && parts.charAt(0) >= 'a'
                && parts.charAt(0) <= 'z'
                && ACCENTS.containsKey(parts.charAt(1));
        return known
                ? Cells.of(this == GERMAN ? "@" : ACCENTS.get(parts.charAt(1))).plus(Cells.of(parts.substring(0, 1)))
                : UNKNOWN;
    }
}
