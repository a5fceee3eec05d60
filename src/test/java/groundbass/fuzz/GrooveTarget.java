package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.groove.Band;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.score.Line;
import java.util.List;
import java.util.Random;

/** Groove text is read, printed, read again, and played under a line. */
final class GrooveTarget implements Target {
    private final Line line =
            LineText.read("tempo 100\nbar 1\n1-4 E0*4\nbar 2\n1-4 rest\n").line();

    @Override
    public List<byte[]> examples() {
        return GrooveLibrary.all().stream()
                .map(GrooveText::print)
                .map(text -> text.getBytes(UTF_8))
                .toList();
    }

    @Override
    public List<String> words() {
        return List.of(
                "groove",
                "meter 4/4",
                "meter 0/0",
                "meter 7/8",
                "kick",
                "snare",
                "hat",
                "x",
                "X",
                "o",
                ".",
                "|",
                "||",
                "-",
                "\n");
    }

    @Override
    public void take(byte[] input, Random random) {
        GrooveText.read(new String(input, UTF_8)).groove().ifPresent(groove -> {
            GrooveText.read(GrooveText.print(groove)).groove().orElseThrow();
            Band.of(Performance.of(line), groove);
        });
    }
}
