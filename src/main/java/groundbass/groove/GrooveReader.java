package groundbass.groove;

import groundbass.remark.Remark;
import groundbass.remark.Span;
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
            Arrays.stream(Piece.values()).map(Piece::word).collect(Collectors.joining(" "));

    private final List<String> lines;
    private final List<Remark> problems = new ArrayList<>();
    private final Map<Piece, Row> rows = new EnumMap<>(Piece.class);
    private String name = "";
    private Meter meter = Meter.COMMON;
    private int columns = 16;
    private Optional<ChordRow> chords = Optional.empty();
    private int back = Style.USUAL_BACK;
    private boolean followsLine;
    private int number;

    /** A row's strokes, and where they stand. */
    private record Row(List<Stroke> strokes, int line, int column) {}

    private record ChordRow(List<ChordStroke> strokes, int line, int column) {}

    GrooveReader(String text) {
        this.lines = text.lines().toList();
    }

    GrooveReading read() {
        for (var line : lines) {
            number++;
            if (number > MOST_LINES) {
                problems.add(GrooveMistake.TOO_MANY_LINES.at(span(1, 1), MOST_LINES));
                break;
            }
            readLine(line);
        }
        rows.values().forEach(row -> checkLength(row.strokes().size(), row.line(), row.column()));
        if (!rows.isEmpty()) {
            chords.ifPresent(row -> checkLength(row.strokes().size(), row.line(), row.column()));
        }
        if (rows.isEmpty() && problems.isEmpty()) {
            number = Math.max(1, number);
            problems.add(GrooveMistake.NO_ROW.at(span(1, 0), PIECES));
        }
        return new GrooveReading(problems.isEmpty() ? Optional.of(groove()) : Optional.empty(), problems);
    }

    private Groove groove() {
        var strokes = new EnumMap<Piece, List<Stroke>>(Piece.class);
        rows.forEach((piece, row) -> strokes.put(piece, row.strokes()));
        var style = new Style(chords.map(ChordRow::strokes).orElse(List.of()), back, followsLine);
        return new Groove(name, meter, columns, strokes).with(style);
    }

    private void readLine(String line) {
        if (line.isBlank() || line.strip().startsWith("#")) {
            return;
        }
        if (line.length() > LONGEST_LINE) {
            problems.add(GrooveMistake.LINE_TOO_LONG.at(span(LONGEST_LINE + 1, 1), line.length(), LONGEST_LINE));
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
            case "chords" -> readChords(field.group(2), column);
            case "back" -> readBack(field.group(2), column);
            case "follow" -> readFollow(field.group(2), column);
            default ->
                Piece.ofWord(field.group(1))
                        .ifPresentOrElse(
                                piece -> readRow(piece, field.group(2), column), () -> problems.add(unknown(field)));
        }
    }

    private Remark unknown(Matcher field) {
        String word = field.group(1);
        return GrooveMistake.UNKNOWN_WORD.at(span(field.start(1) + 1, word.length()), word, PIECES);
    }

    private void readName(String text, int column) {
        if (text.chars().anyMatch(Character::isISOControl) || !text.equals(text.strip())) {
            problems.add(GrooveMistake.BAD_NAME.at(span(column, text.length())));
        } else {
            name = text;
        }
    }

    private void readMeter(String text, int column) {
        var span = span(column, text.length());
        var figures = METER.matcher(text);
        if (!figures.matches()) {
            problems.add(GrooveMistake.BAD_METER.at(span, text));
            return;
        }
        int counts = Integer.parseInt(figures.group(1));
        int unit = Integer.parseInt(figures.group(2));
        var groups = groups(figures);
        if (counts < 1 || counts > Meter.MOST_COUNTS) {
            problems.add(GrooveMistake.BAD_COUNTS.at(span, Meter.MOST_COUNTS));
        } else if (!Meter.isUnit(unit)) {
            problems.add(GrooveMistake.BAD_UNIT.at(span, unit));
        } else if (groups.filter(beats -> !fill(beats, counts)).isPresent()) {
            problems.add(GrooveMistake.BAD_GROUPS.at(span, counts));
        } else {
            meter = groups.map(beats -> new Meter(unit, beats)).orElseGet(() -> Meter.of(counts, unit));
        }
    }

    private static Optional<List<Integer>> groups(Matcher figures) {
        return Optional.ofNullable(figures.group(3))
                .map(typed ->
                        Arrays.stream(typed.split("\\+")).map(Integer::valueOf).toList());
    }

    private static boolean fill(List<Integer> beats, int counts) {
        return beats.stream().allMatch(beat -> beat > 0)
                && beats.stream().mapToInt(beat -> beat).sum() == counts;
    }

    private void readColumns(String text, int column) {
        if (NUMBER.matcher(text).matches() && Integer.parseInt(text) <= Groove.MOST_COLUMNS) {
            columns = Integer.parseInt(text);
        } else {
            problems.add(GrooveMistake.BAD_COLUMNS.at(span(column, text.length()), text, Groove.MOST_COLUMNS));
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
                problems.add(GrooveMistake.BAD_STROKE.at(span(column + i, 1), String.valueOf(sign)));
            }
            strokes.add(stroke.orElse(Stroke.NONE));
        }
        if (rows.putIfAbsent(piece, new Row(strokes, number, column)) != null) {
            problems.add(GrooveMistake.ROW_TWICE.at(span(1, 1), piece.word()));
        }
    }

    private void readChords(String text, int column) {
        var strokes = new ArrayList<ChordStroke>();
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            if (Character.isWhitespace(sign) || sign == '|') {
                continue;
            }
            var stroke = ChordStroke.ofSign(sign);
            if (stroke.isEmpty()) {
                problems.add(GrooveMistake.BAD_CHORD_STROKE.at(span(column + i, 1), String.valueOf(sign)));
            }
            strokes.add(stroke.orElse(ChordStroke.HOLD));
        }
        if (chords.isPresent()) {
            problems.add(GrooveMistake.ROW_TWICE.at(span(1, 1), "chords"));
        }
        chords = Optional.of(chords.orElse(new ChordRow(strokes, number, column)));
    }

    private void readBack(String text, int column) {
        boolean isNumber = text.equals("0") || NUMBER.matcher(text).matches();
        if (isNumber && Integer.parseInt(text) <= Style.FARTHEST_BACK) {
            back = Integer.parseInt(text);
        } else {
            problems.add(GrooveMistake.BAD_BACK.at(span(column, text.length()), text, Style.FARTHEST_BACK));
        }
    }

    /** Only the kick follows the line so far. */
    private void readFollow(String text, int column) {
        if (text.equals(Piece.KICK.word())) {
            followsLine = true;
        } else {
            problems.add(GrooveMistake.BAD_FOLLOW.at(span(column, text.length()), text));
        }
    }

    private void checkLength(int found, int line, int column) {
        int wanted = rows.values().iterator().next().strokes().size();
        boolean wholeBars = found > 0 && found % columns == 0 && found / columns <= Groove.MOST_BARS;
        var span = new Span(line, column, 1);
        if (!wholeBars) {
            problems.add(GrooveMistake.UNEVEN_ROW.at(span, found, columns, Groove.MOST_BARS));
        } else if (found != wanted) {
            problems.add(GrooveMistake.OTHER_LENGTH.at(span, found, wanted));
        }
    }

    private Span span(int column, int length) {
        return new Span(number, column, length);
    }
}
