package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.bench.Timing.Work;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.musicxml.CompressedMusicXml;
import groundbass.musicxml.MusicXmlFile;
import groundbass.performance.Performance;
import groundbass.score.Line;
import groundbass.writing.Writing;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo's slap line to MusicXML, warm, by the thread's own processor time. Anchor: how the line is written down. */
public final class MusicXmlBench {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds", "01-rope-and-pulley", "line.txt");
    private static final int TIMES = 10;

    private MusicXmlBench() {}

    public static void main(String[] args) throws Exception {
        String text = Files.readString(DEMO);
        Line line = LineText.read("line.txt", text).line();
        byte[] file = MusicXmlFile.of(line);
        Work[] works = {
            () -> Writing.of(line),
            () -> MusicXmlFile.of(LineText.read("line.txt", text).line()),
            () -> CompressedMusicXml.of(file),
            () -> MidiFile.of(Performance.of(line))
        };
        var ms = ProcessorTime.medians(TIMES, works);
        print("written down (anchor)      %6.2f ms", ms[0]);
        print(
                "text to MusicXML           %6.2f ms, %d bytes, %.0f a second; aim 100",
                ms[1], file.length, 1000 / ms[1]);
        print("its zip                    %6.2f ms, %d bytes", ms[2], CompressedMusicXml.of(file).length);
        print("MIDI with the band         %6.2f ms", ms[3]);
    }
}
