package groundbass.script.rounds;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.script.Proofreading;
import groundbass.script.Statement;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Statements about one line, each labelled with what a proofreader that errs nowhere would say of it. */
record Round(int number, Line line, Locale language, List<Row> rows) {
    static final Path FOLDER = Path.of("src/test/resources/spec/script/rounds");

    /** @param right what would be right; empty unless the statement is wrong */
    record Row(Label label, String kind, String statement, String right) {}

    /** @param answer what the proofreader made of the row in its place in the talk */
    record Answered(Row row, Answer answer, List<Statement> statements) {}

    enum Label {
        AGREES,
        CONTRADICTS,
        CANNOT_TELL
    }

    enum Answer {
        AGREES,
        CONTRADICTS,
        IN_PART,
        CANNOT_TELL
    }

    static Round read(int number) {
        return read(number, FOLDER.resolve("round-" + number + ".line"), FOLDER.resolve("round-" + number + ".tsv"));
    }

    static Round read(int number, Path lineText, Path talk) {
        var rows = new ArrayList<Row>();
        var language = Locale.ENGLISH;
        for (String text : text(talk).lines().toList()) {
            if (text.startsWith("# language: ")) {
                language = Locale.forLanguageTag(text.substring(12).strip());
            } else if (!text.startsWith("#")) {
                rows.add(row(text.split("\t", -1)));
            }
        }
        var line = LineText.read(text(lineText)).line();
        return new Round(number, line, language, List.copyOf(rows));
    }

    private static Row row(String[] cells) {
        var label = Label.valueOf(cells[0].toUpperCase(Locale.ROOT).replace('-', '_'));
        return new Row(label, cells[1], cells[2], cells.length > 3 ? cells[3] : "");
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rows read as one talk, as they would be spoken. */
    List<Answered> answers() {
        var talk = new StringBuilder();
        var starts = new ArrayList<Integer>();
        for (var row : rows) {
            starts.add(talk.length());
            talk.append(row.statement()).append(' ');
        }
        starts.add(talk.length());
        var read = Proofreading.of(talk.toString(), line, language).statements();
        var answers = new ArrayList<Answered>();
        for (int i = 0; i < rows.size(); i++) {
            int from = starts.get(i);
            int to = starts.get(i + 1);
            var here = read.stream()
                    .filter(statement -> statement.from() >= from && statement.from() < to)
                    .toList();
            answers.add(new Answered(rows.get(i), answer(here), here));
        }
        return answers;
    }

    /** A row agrees where something in it was found right and nothing in it was left open. */
    private static Answer answer(List<Statement> statements) {
        if (statements.stream().anyMatch(Statement::contradicts)) {
            return Answer.CONTRADICTS;
        }
        if (statements.stream().noneMatch(statement -> statement.agrees() || statement.isReadInPart())) {
            return Answer.CANNOT_TELL;
        }
        return statements.stream().allMatch(Statement::agrees) ? Answer.AGREES : Answer.IN_PART;
    }
}
