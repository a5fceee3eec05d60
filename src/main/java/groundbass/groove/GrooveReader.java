package groundbass.groove;

import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** One reading of one text, line by line; goes on after every problem. */
final class GrooveReader {
    static final int MOST_LINES = 200;
    static final int LONGEST_LINE = 1_000;
    private static final Pattern FIELD = Pattern.compile("\\s*(\\S+)\\s*(.*?)\\s*", Pattern.DOTALL);
    private static final Pattern METER =
            Pattern.compile("(\\d{1,2})/(\\d{1,2})(?:\\s*\\((\\d{1,2}(?:\\+\\d{1,2})*)\\))?");
    private static final Pattern NUMBER = Pattern.compile("[1-9]\\d?");
    private static final String PIECES =
            Arrays.stream(Piece.values()).map(Piece::word).collect(Collectors.joining(", "));

    private final List<String> lines;
    private final List<Problem> problems = new ArrayList<>();
    private final Map<Piece, Row> rows = new EnumMap<>(Piece.class);
    private String name = "";
    private Meter meter = Meter.COMMON;
    private int columns = 16;
    private int number;

    /** A row's strokes, and where they stand. */
    private record Row(List<Stroke> strokes, int line, int column) {}

    GrooveReader(String text) {
        this.lines = text.lines().toList();
    }

    Reading read() {
        for (var line : lines) {
            number++;
            if (number > MOST_LINES) {
                problem(1, "line " + number, "at most " + MOST_LINES + " lines");
                break;
            }
            readLine(line);
        }
        rows.values().forEach(this::checkLength);
        if (rows.isEmpty() && problems.isEmpty()) {
            number = Math.max(1, number);
            problem(1, "no row", "a row for at least one of " + PIECES);
        }
        return new Reading(problems.isEmpty() ? Optional.of(groove()) : Optional.empty(), problems);
    }

    private Groove groove() {
        var strokes = new EnumMap<Piece, List<Stroke>>(Piece.class);
        rows.forEach((piece, row) -> strokes.put(piece, row.strokes()));
        return new Groove(name, meter, columns, strokes);
    }

    private void readLine(String line) {
        if (line.isBlank() || line.strip().startsWith("#")) {
            return;
        }
        if (line.length() > LONGEST_LINE) {
            problem(LONGEST_LINE + 1, line.length() + " characters", "at most " + LONGEST_LINE + " in a line");
            return;
        }
        var field = FIELD.matcher(line);
        if (field.matches()) {
            readField(field);
        }
    }

    private void readField(Matcher field) {
        int column = field.start(2) + 1;
        switch (field.group(1)) {
            case "groove" -> readName(field.group(2), column);
            case "meter" -> readMeter(field.group(2), column);
            case "columns" -> readColumns(field.group(2), column);
            default ->
                Piece.ofWord(field.group(1))
                        .ifPresentOrElse(
                                piece -> readRow(piece, field.group(2), column),
                                () -> problem(
                                        field.start(1) + 1,
                                        quoted(field.group(1)),
                                        "groove, meter, columns or one of " + PIECES));
        }
    }

    private void readName(String text, int column) {
        if (text.chars().anyMatch(Character::isISOControl) || !text.equals(text.strip())) {
            problem(column, quoted(text), "a name without control characters");
        } else {
            name = text;
        }
    }

    private void readMeter(String text, int column) {
        try {
            var figures = METER.matcher(text);
            if (figures.matches()) {
                meter = meter(figures);
                return;
            }
        } catch (IllegalArgumentException impossible) {
            problem(column, quoted(text), impossible.getMessage());
            return;
        }
        problem(column, quoted(text), "a meter such as 4/4, 12/8 or 7/8 (2+2+3)");
    }

    private static Meter meter(Matcher figures) {
        int counts = Integer.parseInt(figures.group(1));
        int unit = Integer.parseInt(figures.group(2));
        if (counts > Meter.MOST_COUNTS || counts < 1) {
            throw new IllegalArgumentException("1 to " + Meter.MOST_COUNTS + " counts in a bar");
        }
        if (figures.group(3) == null) {
            return Meter.of(counts, unit);
        }
        var grouped = new Meter(
                unit,
                Arrays.stream(figures.group(3).split("\\+"))
                        .map(Integer::valueOf)
                        .toList());
        if (grouped.counts() != counts) {
            throw new IllegalArgumentException("groups that add up to " + counts);
        }
        return grouped;
    }

    private void readColumns(String text, int column) {
        if (NUMBER.matcher(text).matches() && Integer.parseInt(text) <= Groove.MOST_COLUMNS) {
            columns = Integer.parseInt(text);
        } else {
            problem(column, quoted(text), "how many columns a bar has, 1 to " + Groove.MOST_COLUMNS);
        }
    }

    private void readRow(Piece piece, String text, int column) {
        var strokes = new ArrayList<Stroke>();
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            if (Character.isWhitespace(sign) || sign == '|') {
                continue;
            }
            var stroke = Stroke.ofSign(sign);
            if (stroke.isEmpty()) {
                problem(column + i, quoted(String.valueOf(sign)), "x, X for an accent, g for a ghost stroke, or -");
            }
            strokes.add(stroke.orElse(Stroke.NONE));
        }
        if (rows.putIfAbsent(piece, new Row(strokes, number, column)) != null) {
            problem(1, "a second row for " + piece.word(), "one row for each piece");
        }
    }

    private void checkLength(Row row) {
        int wanted = rows.values().iterator().next().strokes().size();
        int found = row.strokes().size();
        boolean wholeBars = found > 0 && found % columns == 0 && found / columns <= Groove.MOST_BARS;
        if (!wholeBars) {
            problems.add(new Problem(
                    row.line(),
                    row.column(),
                    found + " columns",
                    columns + " for each bar, at most " + Groove.MOST_BARS + " bars"));
        } else if (found != wanted) {
            problems.add(
                    new Problem(row.line(), row.column(), found + " columns", wanted + " as in the first piece's row"));
        }
    }

    private void problem(int column, String found, String expected) {
        problems.add(new Problem(number, column, found, expected));
    }

    private static String quoted(String text) {
        return text.isEmpty() ? "nothing" : "'" + text + "'";
    }
}
