package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.intake.Brought;
import groundbass.intake.Intake;
import groundbass.linetext.LineText;
import groundbass.musicxml.MusicXmlFile;
import groundbass.score.RandomLines;
import java.io.ByteArrayInputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Reads a MusicXML file of five megabytes with many parts, once cold and then warm, and a line of the demonstration many
 * times, by the thread's own processor time; the anchor is the JDK's parser on the same bytes. Start it with
 * {@code -Xmx256m} to see that it suffices.
 */
final class IntakeBench {
    private static final int SIZE = 5_000_000;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private IntakeBench() {}

    public static void main(String[] args) throws Exception {
        byte[] score = manyParts();
        print("%d bytes", score.length);
        for (int turn = 0; turn < 5; turn++) {
            print("read %d ms, parsed alone %d ms", millis(() -> read(score)), millis(() -> parse(score)));
        }
        byte[] small = MusicXmlFile.of(
                LineText.read(Files.readString(Path.of("seed-data/harbour-rounds/01-rope-and-pulley/line.txt")))
                        .line());
        for (int turn = 0; turn < 12; turn++) {
            long took = millis(() -> {
                for (int i = 0; i < 100; i++) {
                    read(small);
                }
            });
            print("100 lines of the demonstration in %d ms", took);
        }
    }

    /** What is timed. */
    private interface Work {
        void run() throws Exception;
    }

    private static long millis(Work work) throws Exception {
        long start = THREADS.getCurrentThreadCpuTime();
        work.run();
        return TimeUnit.NANOSECONDS.toMillis(THREADS.getCurrentThreadCpuTime() - start);
    }

    private static void read(byte[] score) {
        if (!(Intake.read(score, Optional.empty()) instanceof Brought)) {
            throw new IllegalStateException("not read");
        }
    }

    private static void parse(byte[] score) throws Exception {
        SAXParserFactory.newInstance().newSAXParser().parse(new ByteArrayInputStream(score), new DefaultHandler());
    }

    /** The bass, and other parts that have the same music under other names, until the file is large enough. */
    private static byte[] manyParts() {
        int bars = 70;
        String bass = new String(MusicXmlFile.of(RandomLines.line(7, bars)), StandardCharsets.UTF_8);
        int from = bass.indexOf("<part id");
        int to = bass.indexOf("</part>") + "</part>".length();
        String part = bass.substring(from, to);
        var list = new StringBuilder();
        var music = new StringBuilder();
        for (int i = 2; bass.length() + music.length() < SIZE; i++) {
            list.append("<score-part id=\"P").append(i).append("\"><part-name>Horn</part-name></score-part>");
            music.append(part.replace("\"P1\"", "\"P" + i + "\""));
        }
        return (bass.substring(0, to) + music + bass.substring(to))
                .replace("</part-list>", list + "</part-list>")
                .getBytes(StandardCharsets.UTF_8);
    }
}
