package groundbass.fuzz;

import groundbass.intake.Brought;
import groundbass.intake.Intake;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.musicxml.CompressedMusicXml;
import groundbass.musicxml.MusicXmlFile;
import groundbass.performance.Performance;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;

/** Files of other programs: a line comes that can be read as text, or a reason. */
final class IntakeTarget implements Target {
    @Override
    public List<byte[]> examples() {
        var examples = new ArrayList<byte[]>();
        for (long seed = 1; seed <= 4; seed++) {
            var line = RandomLines.line(seed, 2);
            examples.add(MusicXmlFile.of(line));
            examples.add(MidiFile.of(Performance.of(line)));
        }
        examples.add(CompressedMusicXml.of(examples.get(0)));
        return examples;
    }

    @Override
    public List<String> words() {
        return List.of(
                "<chord/>",
                "<grace/>",
                "<backup><duration>3</duration></backup>",
                "<divisions>7</divisions>",
                "<beats>9</beats><beat-type>16</beat-type>",
                "<tie type=\"start\"/>",
                "<barline><repeat direction=\"backward\"/></barline>",
                "<ending number=\"2\" type=\"start\"/>",
                "implicit=\"yes\"",
                "99999999999",
                "-1",
                "\u00ff\u0058\u0004\u0007\u0003",
                "MTrk");
    }

    @Override
    public void take(byte[] input, Random random) {
        var wanted = random.nextBoolean() ? Optional.<Integer>empty() : Optional.of(1 + random.nextInt(3));
        if (Intake.read(input, wanted) instanceof Brought brought) {
            var reading = LineText.read(brought.text(Messages.of(Locale.ENGLISH)));
            if (!reading.problems().isEmpty() || !reading.line().equals(brought.line())) {
                throw new AssertionError("the text is not the line: " + reading.problems());
            }
        }
    }
}
