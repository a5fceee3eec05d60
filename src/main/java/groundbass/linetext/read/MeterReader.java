package groundbass.linetext.read;

import groundbass.linetext.problem.HeadProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads {@code 7/8 (2+2+3)}. */
final class MeterReader {
    private final Tokens tokens;
    private final Problems problems;

    MeterReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    Optional<Meter> read() {
        var figures = tokens.take().orElseThrow();
        int slash = Math.max(0, figures.text().indexOf('/'));
        var counts = TypedNumbers.whole(figures.text().substring(0, slash));
        var unit = TypedNumbers.whole(
                figures.text().substring(Math.min(figures.text().length(), slash + 1)));
        if (counts.isEmpty() || unit.isEmpty() || !Meter.isUnit(unit.get()) || !isCounts(counts.get())) {
            problems.add(HeadProblems.badMeter(figures));
            return Optional.empty();
        }
        if (tokens.atEnd()) {
            return Optional.of(Meter.of(counts.get(), unit.get()));
        }
        return grouped(counts.get(), unit.get());
    }

    private Optional<Meter> grouped(int counts, int unit) {
        var start = tokens.here();
        var text = new StringBuilder();
        while (!tokens.atEnd()) {
            text.append(tokens.take().orElseThrow().text());
        }
        var groups = groups(text.toString());
        int total = groups.stream().mapToInt(Integer::intValue).sum();
        if (groups.isEmpty() || groups.contains(0) || total != counts) {
            problems.add(HeadProblems.badGroups(start.to(tokens.last()), counts));
            return Optional.empty();
        }
        return Optional.of(new Meter(unit, groups));
    }

    /** Empty where the text is no sum in brackets. */
    private static List<Integer> groups(String text) {
        if (text.length() < 2 || !text.startsWith("(") || !text.endsWith(")")) {
            return List.of();
        }
        var groups = new ArrayList<Integer>();
        for (var part : text.substring(1, text.length() - 1).split("\\+", Meter.MOST_COUNTS + 1)) {
            groups.add(TypedNumbers.whole(part).orElse(0));
        }
        return groups;
    }

    private static boolean isCounts(int counts) {
        return counts >= 1 && counts <= Meter.MOST_COUNTS;
    }
}
