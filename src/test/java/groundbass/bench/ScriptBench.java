package groundbass.bench;

import groundbass.linetext.LineText;
import groundbass.script.Proofreading;
import groundbass.script.captions.Script;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/** A spoken lesson, repeated to 50,000, 10,000 and 1,000 words (the longest first, so that the compiler has settled), proofread against its line; medians of 11 rounds, warm. */
public final class ScriptBench {
    private ScriptBench() {}

    public static void main(String[] args) throws IOException {
        var line = LineText.read(Files.readString(Path.of("seed-data/harbour-rounds/01-rope-and-pulley/line.txt")))
                .line();
        String lesson = Script.read(Files.readString(Path.of("src/test/resources/spec/script/captions.vtt")))
                .spoken();
        int words = lesson.split("\\s+").length;
        for (int wanted : new int[] {50_000, 10_000, 1_000}) {
            String text = (lesson + "\n\n").repeat(Math.max(1, wanted / words));
            long[] times = new long[11];
            int found = 0;
            for (int round = -20; round < times.length; round++) {
                long start = System.nanoTime();
                found = Proofreading.of(text, line, Locale.ENGLISH).statements().size();
                if (round >= 0) {
                    times[round] = System.nanoTime() - start;
                }
            }
            Arrays.sort(times);
            System.out.println(
                    text.split("\\s+").length + " words: " + times[5] / 1_000_000 + " ms, " + found + " statements");
        }
    }
}
