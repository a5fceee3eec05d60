package groundbass.cli;

import groundbass.lesson.VideoPictures;
import groundbass.score.Extract;
import groundbass.score.Line;
import java.util.Optional;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Which bars of a line a command is asked for. */
final class Selection {
    @Option(
            names = "--bars",
            paramLabel = "FROM-TO",
            description = "Only these bars, such as 3-4 or 3.",
            converter = BarNumbers.class)
    private Optional<Bars> bars = Optional.empty();

    @Option(
            names = "--system",
            paramLabel = "N",
            description = "Only the bars of the sheet's Nth system, counted from 1.")
    private Optional<Integer> system = Optional.empty();

    /** By their numbers, both included. */
    record Bars(int first, int last) {
        @Override
        public String toString() {
            return first == last ? String.valueOf(first) : first + "-" + last;
        }
    }

    /** Reads {@code 3-4} and {@code 3}. */
    static final class BarNumbers implements ITypeConverter<Bars> {
        private static final Pattern FORM = Pattern.compile("(\\d{1,4})(?:-(\\d{1,4}))?");

        @Override
        public Bars convert(String text) {
            var form = FORM.matcher(text.strip());
            if (!form.matches()) {
                throw new TypeConversionException("'" + text + "' names no bars; write 3-4 or 3");
            }
            int first = Integer.parseInt(form.group(1));
            int last = form.group(2) == null ? first : Integer.parseInt(form.group(2));
            if (last < first) {
                throw new TypeConversionException("'" + text + "' runs backward");
            }
            return new Bars(first, last);
        }
    }

    /** What of the line is wanted; empty where the line has nothing of it. */
    Optional<Line> of(Line line, VideoPictures pictures) {
        if (system.isPresent()) {
            return pictures.system(line, system.get());
        }
        return bars.isPresent()
                ? Extract.bars(line, bars.get().first(), bars.get().last())
                : Optional.of(line);
    }

    /** What the names of files say of it. */
    String suffix() {
        return system.map(number -> "-system-" + number)
                .or(() -> bars.map(numbers -> "-bars-" + numbers))
                .orElse("");
    }

    boolean isContradictory() {
        return bars.isPresent() && system.isPresent();
    }
}
